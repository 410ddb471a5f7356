import type { Sentences } from '../translate.ts';

export const QUESTIONS: Sentences = {
  'Did the meter show {value}?': '¿Mostró el medidor {value}?',
  '{value}?': '¿{value}?',
  '{a}, or {b}? Say which.': '¿{a} o {b}? Diga cuál.',
  '{a} or {b}?': '¿{a} o {b}?',
  '{a}, or {b}? Say it figure by figure.': '¿{a} o {b}? Dígalo cifra por cifra.',
  'Did you turn: {a}, or {b}?': '¿Giró: {a}, o {b}?',
  'Did you turn: {a}?': '¿Giró: {a}?',
  '{n} turns ago, did you turn: {a}?': 'Hace {n} giros, ¿giró: {a}?',
  '{n} turns ago: turned {a}?': 'Hace {n} giros: ¿girado {a}?',
  'Turned {a}, or {b}?': '¿Girado {a}, o {b}?',
  'Turned {a}?': '¿Girado {a}?',
  'Did you say: {a}?': '¿Ha dicho: {a}?',
  'Is the beam path clear? Say yes or no.': '¿Está libre el camino del haz? Diga «sí» o «no».',
  'Path clear?': '¿Camino libre?',
  'Is the gain untouched? Say yes or no.': '¿No se ha tocado la ganancia? Diga «sí» o «no».',
  'Gain untouched?': '¿Ganancia sin tocar?',
  'Reading right? Say yes, or say it again.': '¿Es correcta la lectura? Diga «sí» o repítala.',
  'Reading right?': '¿Lectura correcta?',
  'Say again, please.': 'Repita, por favor.',
  'I did not understand "{x}". Try other words, or type.': 'No he entendido «{x}». Pruebe otras palabras.',
  '{question} Or type it, or say "not sure".': '{question} O escríbalo, o diga «no estoy seguro».',
  '{list} Or say "stop", and note it.': '{list} O diga «alto», y anótelo.',
  '{question} Or say "wait", look again, then "go on".':
    '{question} O diga «espera», mire otra vez y luego «sigue».',
  'Then say the reading again.': 'Entonces diga la lectura otra vez.',
  'Something was turned since then. What does the meter show now?':
    'Desde entonces se ha girado algo. ¿Qué muestra ahora el medidor?',
  'There is no such reading. What does the meter show?': 'No existe esa lectura. ¿Qué muestra el medidor?',
  'What is wrong? Say "wrong" and the right reading, or "undo".':
    '¿Qué está mal? Diga «corrección» y la lectura buena, o «deshacer».',
  'What is not sure? Say what was turned, or "say again".':
    '¿Qué no es seguro? Diga qué se giró, o «repite».',
  'Then look first. Say yes or no.': 'Entonces mire primero. Diga «sí» o «no».',
  'A number is needed: the one on the meter at the panel. Or say no signal, or saturated.':
    'Hace falta un número: el del medidor de la central. O diga «sin señal» o «saturado».',
  'Nothing was asked. What can you not do?': 'No se ha pedido nada. ¿Qué no puede hacer?',
  'No turn was made yet. What went the wrong way?':
    'Aún no se ha girado nada. ¿Qué fue en sentido equivocado?',
  'There is nothing to take back.': 'No hay nada que retirar.',
  'Which adjuster was turned: horizontal or vertical?': '¿Qué tornillo se giró: «horizontal» o «vertical»?',
  'How far was it turned? Say the adjuster, how far and which way: horizontal, half a turn clockwise.':
    '¿Cuánto se giró? Diga el tornillo, cuánto y en qué sentido: «horizontal, media vuelta en sentido horario».',
  'How far did you turn the horizontal?': '¿Cuánto giró el horizontal?',
  'How far did you turn the vertical?': '¿Cuánto giró el vertical?',
  'Which way did you turn the horizontal: clockwise or anticlockwise?':
    '¿En qué sentido giró el horizontal: «horario» o «antihorario»?',
  'Which way did you turn the vertical: clockwise or anticlockwise?':
    '¿En qué sentido giró el vertical: «horario» o «antihorario»?',
  'Heard {n}, but this meter shows steps of {n1}. What does it show?':
    'Oído {n}, pero este medidor va en pasos de {n1}. ¿Qué muestra?',
  'This meter shows {unit}. What does it show?': 'Este medidor muestra {unit}. ¿Qué muestra?',
  'Heard {n}, but this meter only shows {n1} to {n2}. What does it show?':
    'Oído {n}, pero este medidor solo muestra de {n1} a {n2}. ¿Qué muestra?',
  'Who was told? For example, say: told the control room.':
    '¿A quién se avisó? Por ejemplo, diga: «avisada la sala de control».',
  'Is that right? Say yes or no.': '¿Es correcto? Diga «sí» o «no».',
  'Half of it, or all? This test needs half. Say half covered when it is.':
    '¿La mitad o todo? Esta prueba necesita la mitad. Diga «medio tapado» cuando esté.',
  'Is the filter on? Say filter on when it is.': '¿Está puesto el filtro? Diga «filtro puesto» cuando esté.',
};

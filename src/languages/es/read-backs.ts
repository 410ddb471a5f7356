import type { Sentences } from '../translate.ts';

export const READ_BACKS: Sentences = {
  'Heard: {what}.': 'Oído: {what}.',
  'Well done: {what}.': 'Bien hecho: {what}.',
  'Kept as the last visit left it: {what}.': 'Se mantiene como lo dejó la última visita: {what}.',
  'Turned the other way: {what}.': 'Girado en el otro sentido: {what}.',
  'The other adjuster: {what}.': 'El otro tornillo: {what}.',
  'Corrected: {what}.': 'Corregido: {what}.',
  'Corrected: {what}, not {not}.': 'Corregido: {what}, no {not}.',
  'Taken back: {what}.': 'Retirado: {what}.',
  'Noted: {x}.': 'Anotado: {x}.',
  'Issue closed: {x}': 'Incidencia cerrada: {x}',
  'Left out. Nothing was taken down.': 'Omitido. No se ha anotado nada.',
  'Not turned.': 'Sin girar.',
  'Waiting. Say "go on" when ready.': 'En espera. Diga «sigue» cuando esté listo.',
  'Stopped. Say "start" to go on.': 'Parado. Diga «empezar» para seguir.',
  'There is no instruction now.': 'Ahora no hay ninguna orden.',
  'No word for a while. Say a reading, or "go on".':
    'Hace rato que no se oye nada. Diga una lectura, o «sigue».',
  'The emitter phone is away. The next order waits for it.':
    'El teléfono del emisor está ausente. La próxima orden lo espera.',
  'This cannot go on without it. Say "go on" to try again, or "stop", and note why.':
    'Sin esto no se puede seguir. Diga «sigue» para probar otra vez, o «alto», y anote por qué.',
  'Emitter: say ready for the next order.': 'Emisor: diga «preparado» para la próxima orden.',
  'Noted, but there is nothing to do now.': 'Anotado, pero ahora no hay nada que hacer.',
  'The ladder asks: what does the meter show?': 'Desde la escalera preguntan: ¿qué muestra el medidor?',
  'Accepted by override. The reason stays in the record.':
    'Aceptado sin todas las pruebas. El motivo queda en el registro.',
  'Was the screw really turned ({turn})? Then turn it back, or say what was turned.':
    '¿Se giró de verdad el tornillo ({turn})? Entonces gírelo de vuelta, o diga qué se giró.',
  'I heard nothing. Hold the button while you speak.': 'No he oído nada. Mantenga el botón mientras habla.',
  'Speech is not available. Please type.': 'La voz no está disponible. Escriba, por favor.',
  'Speech took too long. Say it again, or type.': 'La voz tardó demasiado. Repita o escriba.',
  'Speech failed. Say it again, or type.': 'La voz falló. Repita o escriba.',
  'That was cut off. Please say it again.': 'Se ha cortado. Repita, por favor.',
  'Not yet. Missing: {needs}.': 'Aún no. Falta: {needs}.',
};

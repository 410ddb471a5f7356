import type { Sentences } from '../translate.ts';

export const PRACTICE: Sentences = {
  Practice: 'Práctica',
  'a simulated pair': 'una pareja simulada',
  Practise: 'Practicar',
  'The screens are the real ones. The beam, the meter and the screws are drawn, and nothing is a record. It works without a link.':
    'Las pantallas son las de verdad. El haz, el medidor y los tornillos están dibujados, y nada es un registro. Funciona sin conexión.',
  'First time: five steps, about a minute': 'Primera vez: cinco pasos, un minuto más o menos',
  'At the panel: read the meter': 'En la central: leer el medidor',
  'At the emitter: turn the screws': 'En el emisor: girar los tornillos',
  'Start at the panel': 'Empezar en la central',
  'Start at the emitter': 'Empezar en el emisor',
  'With trouble': 'Con problemas',
  'What shall go wrong?': '¿Qué debe ir mal?',
  'Surprise me': 'Sorpréndame',
  'On two phones': 'En dos teléfonos',
  'This phone is at the panel and shows the drawn meter. The other one joins with a code and turns the drawn screws. For this you need the link.':
    'Este teléfono está en la central y muestra el medidor dibujado. El otro se une con un código y gira los tornillos dibujados. Para esto hace falta conexión.',
  'Start on two phones': 'Empezar en dos teléfonos',
  'This phone then leaves the job it is in.': 'Este teléfono deja entonces el trabajo en el que está.',
  'This phone then leaves {x}.': 'Este teléfono deja entonces {x}.',
  'the job it is in': 'el trabajo en el que está',
  'Practice could not be opened: {why}': 'No se pudo abrir la práctica: {why}',
  'Too much light': 'Demasiada luz',
  'The meter stands at its end. That number means nothing: say "saturated".':
    'El medidor está al tope. Ese número no significa nada: diga «saturado».',
  'A turn that goes the wrong way': 'Un giro en sentido equivocado',
  'Once, a screw goes the other way than meant. Look at it before you say "done"; say "wrong way" if it was.':
    'Una vez, un tornillo gira al revés de lo pedido. Mírelo antes de decir «hecho»; diga «sentido equivocado» si fue así.',
  'A wall that reflects': 'Una pared que refleja',
  'The light first comes from a wall. The card in the direct line shows it: the meter does not go to nothing.':
    'La luz viene primero de una pared. El cartón en la línea directa lo muestra: el medidor no cae a nada.',
  'A shaking mount': 'Un soporte que tiembla',
  'The meter never stands still. Say a number from the middle of what you see.':
    'El medidor nunca se para. Diga un número del medio de lo que ve.',
  'A number heard wrong': 'Un número mal oído',
  'Once, a number from the panel is heard as another. Listen to the read-back, and correct it.':
    'Una vez, un número de la central se oye como otro. Escuche la repetición y corríjala.',
  'Read the drawn meter. Type its number, then tap Send.':
    'Lea el medidor dibujado. Escriba su número y toque Enviar.',
  'Your colleague turns a screw. Watch the meter move, and wait.':
    'Su compañero gira un tornillo. Mire cómo se mueve el medidor, y espere.',
  'When the order says "read", send the new number.': 'Cuando la orden diga que lea, envíe el nuevo número.',
  'A wrong number sent? Try it: tap Correct, and give the number of the meter.':
    '¿Número equivocado? Pruebe: toque Corregir y dé el número del medidor.',
  'You need time? Tap Wait, then Go on.': '¿Necesita tiempo? Toque Espera, luego Sigue.',
  'The large words are your order. Turn the drawn screw as they say.':
    'Las palabras grandes son su orden. Gire el tornillo dibujado como dicen.',
  'It is turned? Tap Done.': '¿Ya está girado? Toque Hecho.',
  'Hands off. Your colleague reads the meter, and you hear what changed.':
    'Manos fuera. Su compañero lee el medidor, y usted oye qué cambió.',
  'Nothing to do for you yet. Wait for your order.': 'Usted aún no tiene nada que hacer. Espere su orden.',
  'Not heard? Tap Say again.': '¿No lo oyó? Toque Repite.',
  'You need both hands? Tap Wait, then Go on.': '¿Necesita las dos manos? Toque Espera, luego Sigue.',
  '{n} of {n1}: {lesson}': '{n} de {n1}: {lesson}',
  'That is all you need. Go on until "accept", or end here.':
    'Es todo lo que necesita. Siga hasta «acepto», o termine aquí.',
  'Your colleague calls out': 'Su compañero avisa',
  '{axis}: not turned': '{axis}: sin girar',
  '{axis}: {glyph} clockwise': '{axis}: {glyph} en sentido horario',
  '{axis}: {glyph} anticlockwise': '{axis}: {glyph} en sentido antihorario',
  'Turn the horizontal screw {amount} {sense}': 'Girar el tornillo horizontal {amount} {sense}',
  'Turn the vertical screw {amount} {sense}': 'Girar el tornillo vertical {amount} {sense}',
  'Practice on one phone: nobody else joins it.': 'Práctica en un teléfono: no se une nadie más.',
  'The same pair is now played with a simulated crew that does what it is asked.':
    'La misma pareja se juega ahora con un equipo simulado que hace lo que se le pide.',
  'Ended before it was accepted': 'Terminado antes de aceptar',
  'Well done': 'Bien hecho',
  'Accepted, but look': 'Aceptado, pero mire',
  'Nothing was missed.': 'No se pasó nada por alto.',
  'It was accepted without its proof.': 'Se aceptó sin su prueba.',
  'It was accepted on the light of a wall. On a real pair, smoke in the beam would bring no alarm.':
    'Se aceptó con la luz de una pared. En una pareja real, el humo en el haz no daría alarma.',
  'It was accepted beside the peak: a little dirt, and it loses its signal.':
    'Se aceptó al lado del máximo: con un poco de suciedad pierde la señal.',
  'A number was said while the meter was at its end.': 'Se dijo un número con el medidor al tope.',
  'A number that the meter did not show was not put right.':
    'No se corrigió un número que el medidor no mostraba.',
  'A screw was not turned as reported, and it was not put right.':
    'Un tornillo no se giró como se dijo, y no se corrigió.',
  '"Blocked" was said without a card in the beam. A wall would not have been found.':
    'Se dijo «tapado» sin un cartón en el haz. No se habría descubierto una pared.',
  '"Clear" was said while the card was in the beam.': 'Se dijo «libre» con el cartón en el haz.',
  '"Aimed" was said without aiming.': 'Se dijo «apuntado» sin apuntar.',
  mastered: 'superado',
  missed: 'no visto',
  'did not come up': 'no ocurrió',
  Turns: 'Giros',
  Readings: 'Lecturas',
  Time: 'Tiempo',
  'Words and taps': 'Palabras y toques',
  'Wrong numbers': 'Números equivocados',
  '{n}, put right: {n1}': '{n}, corregidos: {n1}',
  'Below the best': 'Por debajo del mejor',
  You: 'Usted',
  Crew: 'Equipo',
  'Crew: a simulated one on the same pair. It obeys, and looks again only when asked; 6 s a turn, 2 s a reading (our estimate).':
    'Equipo: uno simulado con la misma pareja. Obedece, y solo mira de nuevo si se le pide; 6 s por giro, 2 s por lectura (estimación nuestra).',
  'The crew had not got there when its time was up.': 'El equipo no había terminado al acabarse su tiempo.',
  'The same again': 'Otra vez lo mismo',
  'Practise something else': 'Practicar otra cosa',
  'Practice: nothing here is a record': 'Práctica: nada de esto es un registro',
  'End, and see how it went': 'Terminar y ver cómo fue',
  'Leave practice': 'Salir de la práctica',
  'Practice: the hand turned {turn}': 'Práctica: la mano giró {turn}',
  'Practice: the hand set the gain {n} dB below full':
    'Práctica: la mano puso la ganancia {n} dB por debajo del máximo',
  'Practice: the card was held into the beam': 'Práctica: se puso el cartón en el haz',
  'Practice: the card was taken out': 'Práctica: se quitó el cartón',
  'Practice: aimed by eye': 'Práctica: apuntado a ojo',
  'Drawn screws': 'Tornillos dibujados',
  'Drawn emitter': 'Emisor dibujado',
  'It points at the receiver now.': 'Ahora apunta al receptor.',
  'It points past the receiver.': 'Apunta fuera del receptor.',
  'Aim at the receiver': 'Apuntar al receptor',
  'Drawn card': 'Cartón dibujado',
  'The card is in the beam.': 'El cartón está en el haz.',
  'The card is out of the beam.': 'El cartón está fuera del haz.',
  'Take the card out': 'Quitar el cartón',
  'Hold the card in': 'Poner el cartón',
  'Drawn gain': 'Ganancia dibujada',
  'Gain: full': 'Ganancia: al máximo',
  'Gain: {n} dB below full': 'Ganancia: {n} dB por debajo del máximo',
  'Drawn meter': 'Medidor dibujado',
  'What to do': 'Qué hacer',
  'A drawn beam, with trouble if you like. Alone on this phone, or on two.':
    'Un haz dibujado, con problemas si quiere. Solo en este teléfono, o en dos.',
  'Your colleague aims the emitter. Watch the meter move, and wait.':
    'Su compañero apunta el emisor. Vea cómo se mueve el medidor, y espere.',
  'The large words are your order. Aim the drawn emitter, then tap Aimed.':
    'Las palabras grandes son su orden. Apunte el emisor dibujado y toque Apuntado.',
  'Now turn the drawn screw as the large words say.':
    'Ahora gire el tornillo dibujado como dicen las palabras grandes.',
};

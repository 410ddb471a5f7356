import type { Sentences } from '../translate.ts';

/** The phone that follows a tone or a lamp. */
export const INDICATOR: Sentences = {
  'The phone at the panel listens to the tone now.': 'El teléfono de la central escucha ahora el tono.',
  'The phone at the panel looks at the lamp now.': 'El teléfono de la central mira ahora la lámpara.',
  'The phone at the panel has stopped listening.': 'El teléfono de la central ya no escucha.',
  'The phone at the panel has stopped looking at the lamp.':
    'El teléfono de la central ya no mira la lámpara.',
  'The phone at the panel has lost the lamp: it was moved.':
    'El teléfono de la central ha perdido la lámpara: se ha movido.',
  'The phone at the panel sees nothing around the lamp: it is too dark.':
    'El teléfono de la central no ve nada alrededor de la lámpara: está demasiado oscuro.',
  'The phone at the panel cannot tell the tone: it is too loud there.':
    'El teléfono de la central no distingue el tono: hay demasiado ruido.',
  'The phone at the panel hears nothing at all: its microphone is off.':
    'El teléfono de la central no oye nada: su micrófono está apagado.',
  'The phone at the panel cannot tell what the indicator does.':
    'El teléfono de la central no sabe qué hace el indicador.',
  'It was taught: what counts is how strong it is.': 'Ha aprendido: cuenta su intensidad.',
  'It was taught: what counts is its pitch.': 'Ha aprendido: cuenta si es agudo o grave.',
  'It was taught: what counts is its colour.': 'Ha aprendido: cuenta su color.',
  'It was taught: what counts is how often it goes on.': 'Ha aprendido: cuenta cuántas veces se enciende.',
  '{value} (by a tone, taught profile, {n} moments)': '{value} (por un tono, perfil enseñado, {n} momentos)',
  '{value} (by a lamp, taught profile, {n} moments)':
    '{value} (por una lámpara, perfil enseñado, {n} momentos)',
  'by a tone, taught profile': 'por un tono, perfil enseñado',
  'by a lamp, taught profile': 'por una lámpara, perfil enseñado',
  'The phone at the panel tells what the light does. Only what it tells counts.':
    'El teléfono de la central dice qué hace la luz. Solo cuenta lo que él dice.',
  'This phone follows the indicator': 'Este teléfono sigue el indicador',
  'What tells of the light at the panel? Prop this phone there, so that nobody has to hold it.':
    '¿Qué indica la luz en la central? Apoye allí este teléfono, de modo que nadie tenga que sujetarlo.',
  'A tone': 'Un tono',
  'A lamp': 'Una lámpara',
  'Now show it the tone three times. Press, and be quiet until it says that it has learnt. Leave the phone as it stands.':
    'Ahora hágale oír el tono tres veces. Pulse y guarde silencio hasta que diga que ha aprendido. Deje el teléfono como está.',
  'Draw the box close round the lamp. Around it must be edges to see, such as those of the panel. Then show it the lamp three times: press, and keep out of the picture.':
    'Dibuje el recuadro ajustado a la lámpara. Alrededor debe haber bordes visibles, como los de la central. Después enséñele la lámpara tres veces: pulse y quédese fuera de la imagen.',
  'The box round the lamp. The arrow keys move it; with Shift they change its size.':
    'El recuadro de la lámpara. Las flechas lo mueven; con Mayús cambian su tamaño.',
  'Show me none': 'Enséñame nada',
  'No light at all: cover the beam.': 'Nada de luz: tape el haz.',
  'This is none': 'Esto es nada',
  'Show me some': 'Enséñame algo',
  'So little light that you can just tell it from none.': 'Tan poca luz que apenas se distinga de nada.',
  'This is some': 'Esto es algo',
  'Show me plenty': 'Enséñame mucho',
  'So much light that more changes nothing.': 'Tanta luz que más no cambie nada.',
  'This is plenty': 'Esto es mucho',
  Learnt: 'Aprendido',
  'Learning: keep still': 'Aprendiendo: quieto',
  Begin: 'Empezar',
  'soon after I press': 'justo después de pulsar',
  '1 minute after I press': '1 minuto después de pulsar',
  '3 minutes after I press': '3 minutos después de pulsar',
  'Begins in {n} s': 'Empieza en {n} s',
  'Teach it once more': 'Enseñarle otra vez',
  'Follow it': 'Seguirlo',
  'Nothing was there at some or at plenty. Bring the phone closer, or choose the other kind of indicator.':
    'En algo o en mucho no había nada. Acerque el teléfono o elija el otro tipo de indicador.',
  'Some and plenty looked or sounded alike. Show it less at some, and more at plenty.':
    'Algo y mucho eran iguales. Muestre menos en algo y más en mucho.',
  'None and some looked or sounded alike. Show it a little more at some.':
    'Nada y algo eran iguales. Muestre un poco más en algo.',
  'Some did not lie between none and plenty. Show it all three once more, in this order.':
    'Algo no estaba entre nada y mucho. Muestre los tres otra vez, en este orden.',
  'It could not hear or see well enough just then. Try that one again.':
    'En ese momento no podía oír o ver bien. Repita ese.',
  Waits: 'Espera',
  'Too loud!': '¡Demasiado ruido!',
  'Hears nothing!': '¡No oye nada!',
  'Not clear!': '¡No está claro!',
  'Put the phone back, or teach it once more. Nothing is told until then.':
    'Ponga el teléfono en su sitio o enséñele otra vez. Hasta entonces no dice nada.',
  'Give the panel light, or uncover the camera. Nothing is told until then.':
    'Ilumine la central o destape la cámara. Hasta entonces no dice nada.',
  'It is louder than when it was taught. Wait, or stop the noise. Nothing is told until then.':
    'Hay más ruido que cuando aprendió. Espere o pare el ruido. Hasta entonces no dice nada.',
  'Look whether another app has the microphone. Nothing is told until then.':
    'Mire si otra aplicación tiene el micrófono. Hasta entonces no dice nada.',
  'It fits nothing that it was taught. Look at the indicator, or teach it once more.':
    'No encaja con nada de lo que aprendió. Mire el indicador o enséñele otra vez.',
  'It tells what the light does each time it is asked for. Nothing was asked for yet.':
    'Dice qué hace la luz cada vez que se le pide. Aún no se ha pedido nada.',
  'This browser changes the loudness of the microphone by itself: only the pitch, or how often it goes on, can be followed.':
    'Este navegador cambia por sí mismo el volumen del micrófono: solo se puede seguir si es agudo o grave, o cuántas veces suena.',
  'A second phone listens to a tone or looks at a lamp':
    'Un segundo teléfono escucha un tono o mira una lámpara',
  'Two phones, and something to prop one of them at the panel. A tone or a lamp there that follows the light. No number. A detector that sets its own gain cannot be aligned so.':
    'Dos teléfonos, y algo para apoyar uno de ellos en la central. Allí, un tono o una lámpara que siga la luz. Ningún número. Un detector que ajusta él mismo su ganancia no se puede alinear así.',
  'Prop the first phone and teach it: show it none, some and plenty.':
    'Apoye el primer teléfono y enséñele: muéstrele nada, algo y mucho.',
  'Climb. The propped phone tells what the light does: rising, falling, steady, nothing, too strong. The phone that you carry speaks each order. Expect about {n} turns.':
    'Suba. El teléfono apoyado dice qué hace la luz: sube, baja, estable, nada, demasiada luz. El teléfono que lleva consigo dice cada orden. Cuente con unas {n} vueltas.',
  'Weaker than with numbers: accepted on trends, no reading. Each trend was told by a phone, by the profile that you taught it, and the record names both. How strong the signal is, and whether it lies in the band, nobody read. Read it at the panel before you rely on it.':
    'Más débil que con números: aceptado por tendencias, sin lectura. Cada tendencia la dijo un teléfono, por el perfil que usted le enseñó, y el registro nombra ambos. Nadie leyó la intensidad de la señal ni si está en la banda. Léala en la central antes de fiarse de ella.',
  'Begin with a tone or a lamp': 'Empezar con un tono o una lámpara',
  'accepted on trends, no reading: a second phone told what a tone or a lamp did, by a profile that the same person taught it':
    'aceptado por tendencias, sin lectura: un segundo teléfono dijo qué hacía un tono o una lámpara, por un perfil que le enseñó la misma persona',
  'light seen': 'se vio luz',
  'Hands off: the phone at the panel tells what the light does.':
    'Manos fuera: el teléfono de la central dice qué hace la luz.',
  'The other phone is not taught yet': 'El otro teléfono aún no ha aprendido',
  'Teach the phone at the panel none, some and plenty. Then it tells what the light does.':
    'Enseñe al teléfono de la central nada, algo y mucho. Después avisa lo que hace la luz.',
  'Wait: the other phone tells': 'Espere: avisa el otro teléfono',
  'Leave the card in the beam: the phone at the panel tells what is left.':
    'Deje la tarjeta en el haz: el teléfono de la central dice qué queda.',
  'Leave the card: the other phone tells': 'Deje la tarjeta: avisa el otro teléfono',
  some: 'algo',
  plenty: 'mucho',
};

import type { Sentences } from '../translate.ts';

export const LOOKING: Sentences = {
  'You see an indicator from the ladder': 'Usted ve un indicador desde la escalera',
  'This phone only. A lamp or a tone that follows the light, and that you see or hear from the ladder. No number. A detector that sets its own gain cannot be aligned so.':
    'Solo este teléfono. Una lámpara o un tono que sigue a la luz, y que usted ve u oye desde la escalera. Ningún número. Un detector que ajusta su propia ganancia no se puede alinear así.',
  'Set the gain beforehand so that the indicator is neither dark nor at its limit.':
    'Antes, ajuste la ganancia para que el indicador no esté ni apagado ni en su límite.',
  'Turn as it says, and say "done" each time. Then say only what the light does: rising, falling, steady, nothing, too strong.':
    'Gire como dice, y diga «hecho» cada vez. Luego diga solo qué hace la luz: sube, baja, estable, nada, demasiada señal.',
  'It is held against your last look: look well each time, and always from the same place.':
    'Se compara con su última mirada: mire bien cada vez, y siempre desde el mismo sitio.',
  'Expect about {n} turns. For the blocking check you put a card into the beam and look from the ladder.':
    'Cuente con unos {n} giros. Para la prueba de tapado pone una tarjeta en el haz y mira desde la escalera.',
  'Weaker than with numbers: accepted on trends, no reading. Each side of each peak was seen to be darker twice, the light went out behind a card, and then stayed the same. How strong the signal is, and whether it lies in the band, nobody read. Read it at the panel before you rely on it.':
    'Más débil que con números: aceptado por tendencias, sin lectura. Cada lado de cada máximo se vio más oscuro dos veces, la luz se apagó detrás de una tarjeta y después siguió igual. Nadie leyó cuánta señal hay ni si está dentro de la banda. Léala en la central antes de fiarse.',
  'Begin with an indicator': 'Empezar con un indicador',
  'accepted on trends, no reading: the same person saw from the ladder what an indicator did':
    'aceptado por tendencias, sin lectura: la misma persona vio desde la escalera qué hacía un indicador',
  'Look at the indicator only when you stand still and hold on. Never look into the emitter or a laser.':
    'Mire el indicador solo cuando esté quieto y bien agarrado. No mire nunca al emisor ni a un láser.',
  'Look: steady, nothing or too strong?': 'Mire: ¿«estable», «nada» o «demasiada señal»?',
  'Steady, nothing, too strong?': '¿Estable, nada, demasiada señal?',
  'Against your last look: rising, falling, steady?': 'Con su última mirada: ¿sube, baja, estable?',
  'Look again: still steady?': 'Mire otra vez: ¿sigue «estable»?',
  'Still steady?': '¿Sigue estable?',
  'Behind the card: nothing, or steady?': 'Detrás de la tarjeta: ¿«nada» o «estable»?',
  'Behind the card: nothing?': 'Detrás de la tarjeta: ¿nada?',
  'Too soon: not counted. Wait until you are asked.':
    'Demasiado pronto: no cuenta. Espere a que se le pregunte.',
  'No number counts here. Say rising, falling, steady, nothing or too strong.':
    'Aquí no cuenta ningún número. Diga «sube», «baja», «estable», «nada» o «demasiada señal».',
  'Say undo. Then say what the light does.': 'Diga «deshacer». Luego diga qué hace la luz.',
  'a look at the light here': 'una mirada a la luz aquí',
  'light that is not too strong: lower the gain': 'una luz que no sea demasiada: baje la ganancia',
  'light seen to fall twice on each side of the horizontal peak':
    'la luz vista bajar dos veces a cada lado del máximo horizontal',
  'light seen to fall twice on each side of the vertical peak':
    'la luz vista bajar dos veces a cada lado del máximo vertical',
  'both adjusters turned across their peaks, and no rise beside them':
    'los dos tornillos girados a través de sus máximos, y ninguna subida al lado',
  'a look where a stronger peak may be': 'una mirada donde puede haber un máximo más fuerte',
  'the blocking check: blocked, nothing may be seen, and then the same light as before':
    'la prueba de tapado: tapado no se puede ver nada, y después la misma luz que antes',
  'light that stays the same': 'una luz que sigue igual',
  'a fresh look': 'una mirada reciente',
  'Not for a detector that sets its own gain: its indicator stays the same while the light changes.':
    'No para un detector que ajusta su propia ganancia: su indicador sigue igual mientras la luz cambia.',
  Light: 'Luz',
  'accepted on trends, no reading': 'aceptado por tendencias, sin lectura',
  'nobody read a number: whether it lies in the band is not known':
    'nadie leyó un número: no se sabe si está dentro de la banda',
  'light, no number': 'luz, sin número',
  'Indicator without a number': 'Indicador sin número',
  'Look at the light': 'Mire la luz',
  Nothing: 'Nada',
  'Too strong': 'Demasiada',
  'Keeps changing': 'No para de cambiar',
  'Nobody read a number: there is nothing to draw. What the light did stands in the exchange.':
    'Nadie leyó un número: no hay nada que dibujar. Lo que hizo la luz está en el intercambio.',
};

import type { Sentences } from '../translate.ts';

/** How the unit hangs, and what has reached the ladder. */
export const MOUNTING: Sentences = {
  'adjuster marked horizontal': 'tornillo marcado horizontal',
  'adjuster marked vertical': 'tornillo marcado vertical',
  'It moves the beam left and right.': 'Mueve el haz a izquierda y derecha.',
  'It moves the beam up and down.': 'Mueve el haz arriba y abajo.',
  'How does the unit hang?': '¿Cómo está montada la unidad?',
  'Look at the front of the unit. Where does its top point? On a unit on its side, each adjuster moves the beam the other way.':
    'Mire la unidad de frente. ¿Adónde apunta su parte de arriba? En una unidad de lado, cada tornillo mueve el haz en el otro sentido.',
  'I cannot see it yet': 'Aún no la veo',
  Upright: 'Derecha',
  'On its side, top to the left': 'De lado, la parte de arriba a la izquierda',
  'On its side, top to the right': 'De lado, la parte de arriba a la derecha',
  'Upside down': 'Boca abajo',
  'On the ladder: not heard yet.': 'En la escalera: aún no se oyó.',
  'On the ladder: shown, not spoken to its end.': 'En la escalera: se muestra; no se dijo hasta el final.',
  'On the ladder: shown and spoken.': 'En la escalera: se mostró y se dijo.',
  'The unit hangs upright': 'La unidad está derecha',
  'The unit hangs on its side, its top to the left':
    'La unidad está de lado, la parte de arriba a la izquierda',
  'The unit hangs on its side, its top to the right':
    'La unidad está de lado, la parte de arriba a la derecha',
  'The unit hangs upside down': 'La unidad está boca abajo',
};

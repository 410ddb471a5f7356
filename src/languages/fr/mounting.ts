import type { Sentences } from '../translate.ts';

/** How the unit hangs, and what has reached the ladder. */
export const MOUNTING: Sentences = {
  'adjuster marked horizontal': 'vis marquée horizontale',
  'adjuster marked vertical': 'vis marquée verticale',
  'It moves the beam left and right.': 'Elle déplace le faisceau à gauche et à droite.',
  'It moves the beam up and down.': 'Elle déplace le faisceau vers le haut et le bas.',
  'How does the unit hang?': "Comment l'appareil est-il monté ?",
  'Look at the front of the unit. Where does its top point? On a unit on its side, each adjuster moves the beam the other way.':
    "Regardez l'appareil de face. Où pointe son dessus ? Sur un appareil couché, chaque vis déplace le faisceau dans l'autre sens.",
  'I cannot see it yet': 'Je ne le vois pas encore',
  Upright: 'Debout',
  'On its side, top to the left': 'Couché, le dessus à gauche',
  'On its side, top to the right': 'Couché, le dessus à droite',
  'Upside down': 'Tête en bas',
  'On the ladder: not heard yet.': "Sur l'échelle : pas encore entendu.",
  'On the ladder: shown, not spoken to its end.': "Sur l'échelle : affiché, pas dit jusqu'au bout.",
  'On the ladder: shown and spoken.': "Sur l'échelle : affiché et dit.",
  'The unit hangs upright': "L'appareil est debout",
  'The unit hangs on its side, its top to the left': "L'appareil est couché, le dessus à gauche",
  'The unit hangs on its side, its top to the right': "L'appareil est couché, le dessus à droite",
  'The unit hangs upside down': "L'appareil est tête en bas",
};

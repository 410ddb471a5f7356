import type { Sentences } from '../translate.ts';

/** How the unit hangs, and what has reached the ladder. */
export const MOUNTING: Sentences = {
  'adjuster marked horizontal': 'Schraube mit Aufschrift horizontal',
  'adjuster marked vertical': 'Schraube mit Aufschrift vertikal',
  'It moves the beam left and right.': 'Sie bewegt den Strahl nach links und rechts.',
  'It moves the beam up and down.': 'Sie bewegt den Strahl nach oben und unten.',
  'How does the unit hang?': 'Wie hängt das Gerät?',
  'Look at the front of the unit. Where does its top point? On a unit on its side, each adjuster moves the beam the other way.':
    'Sehen Sie das Gerät von vorn an. Wohin zeigt seine Oberseite? Bei einem Gerät auf der Seite bewegt jede Schraube den Strahl in der anderen Richtung.',
  'I cannot see it yet': 'Ich sehe es noch nicht',
  Upright: 'Aufrecht',
  'On its side, top to the left': 'Auf der Seite, Oberseite nach links',
  'On its side, top to the right': 'Auf der Seite, Oberseite nach rechts',
  'Upside down': 'Kopfüber',
  'On the ladder: not heard yet.': 'Auf der Leiter: noch nicht gehört.',
  'On the ladder: shown, not spoken to its end.': 'Auf der Leiter: gezeigt, nicht zu Ende gesprochen.',
  'On the ladder: shown and spoken.': 'Auf der Leiter: gezeigt und gesprochen.',
  'The unit hangs upright': 'Das Gerät hängt aufrecht',
  'The unit hangs on its side, its top to the left': 'Das Gerät hängt auf der Seite, Oberseite nach links',
  'The unit hangs on its side, its top to the right': 'Das Gerät hängt auf der Seite, Oberseite nach rechts',
  'The unit hangs upside down': 'Das Gerät hängt kopfüber',
};

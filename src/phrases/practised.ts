import type { PracticeAct } from '../model/practice.ts';
import { movedText } from './facts.ts';

/** What was really done in practice, as a line of the exchange. */
export function practisedText(act: PracticeAct): string {
  switch (act.did) {
    case 'turn':
      return `Practice: the hand turned ${movedText(act.axis, act.eighths)}`;
    case 'gain':
      return `Practice: the hand set the gain ${act.db} dB below full`;
    case 'card':
      return act.inPath ? 'Practice: the card was held into the beam' : 'Practice: the card was taken out';
    case 'aim':
      return 'Practice: aimed by eye';
    case 'misheard':
      return `Practice: the next words were "${act.meant}", and are heard wrong on purpose`;
  }
}

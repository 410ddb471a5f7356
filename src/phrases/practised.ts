import type { HandAct } from '../model/practice.ts';
import { movedText } from './facts.ts';

/** What hands did in practice, while it waits to be sent. */
export function practisedText(act: HandAct): string {
  switch (act.did) {
    case 'turn':
      return `Practice: the hand turned ${movedText(act.axis, act.eighths)}`;
    case 'gain':
      return `Practice: the hand set the gain ${act.db} dB below full`;
    case 'card':
      return act.inPath ? 'Practice: the card was held into the beam' : 'Practice: the card was taken out';
    case 'aim':
      return 'Practice: aimed by eye';
  }
}

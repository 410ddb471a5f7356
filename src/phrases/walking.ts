import type { Advice } from '../model/advice.ts';

/** The words of an order for a person who walks between ladder and meter. */
interface Said {
  say: string;
  show: string;
}

/** Still at the meter: only the number is wanted once more. */
function isAtMeter(rule: string): boolean {
  switch (rule) {
    case 'read-twice':
    case 'hold-steady':
    case 'keep-steady':
      return true;
    default:
      return false;
  }
}

const STAY: Said = { say: 'Stay at the meter. Read it again.', show: 'Stay: read the meter again' };
const GO: Said = { say: 'Go to the meter. Say what it shows.', show: 'Go and read the meter' };
const HANDS_OFF: Said = { say: 'Hands off. Now go to the meter.', show: 'Hands off: go to the meter' };
const WAIT_HERE: Said = { say: 'Stay at the meter. Proving that it holds.', show: 'Stay: proving steady' };

/** Undefined: the words are those of a crew of two. */
export function walkingText({ action, rule }: Advice): Said | undefined {
  if (action.kind === 'read') return isAtMeter(rule) ? STAY : GO;
  if (action.kind !== 'hold') return undefined;
  if (action.reason === 'settling') return HANDS_OFF;
  return action.reason === 'proving-steady' ? WAIT_HERE : undefined;
}

/** Under an order at the beam: the plan of the trip. `trips`: to the meter so far; the figures are the engine's. */
export function tripText(trips: number, { turnsOnTrip = 1, cardOnTrip = 0 }: Advice['figures']): string {
  const trip = trips + 1;
  if (cardOnTrip > 0)
    return turnsOnTrip > 1
      ? `Trip ${trip}: ${turnsOnTrip} turns, then the card, then the meter.`
      : `Trip ${trip}: this turn, then the card, then the meter.`;
  return turnsOnTrip > 1
    ? `Trip ${trip}: ${turnsOnTrip} turns, then the meter.`
    : `Then go to the meter: trip ${trip}.`;
}

import type { Entry } from '../model/entry.ts';
import type { Fact, FactOf, Seat } from '../model/facts.ts';
import { WORDS } from '../phrases/buttons.ts';

type Done = (facts: readonly Fact[]) => boolean;

const has =
  <T extends Fact['type']>(type: T, is: (fact: FactOf<T>) => boolean = () => true): Done =>
  (facts) =>
    facts.some((fact) => fact.type === type && is(fact as FactOf<T>));

/** The one, and after it the other. */
const then =
  (first: Fact['type'], second: Fact['type']): Done =>
  (facts) => {
    const at = facts.findIndex(({ type }) => type === first);
    return at >= 0 && facts.slice(at).some(({ type }) => type === second);
  };

/** When each lesson of the first practice is learnt: by doing it. In the order of their words. */
const LEARNT: Readonly<Record<Seat, readonly Done[]>> = {
  panel: [
    has('reading'),
    has('re-aimed'),
    then('re-aimed', 'reading'),
    has('reading', ({ replaces }) => replaces !== undefined),
    then('pause', 'resume'),
  ],
  emitter: [
    has('re-aimed'),
    has('practised', ({ act }) => act.did === 'turn'),
    has('move'),
    then('move', 'reading'),
    has('said', ({ seat, text }) => seat === 'emitter' && text === WORDS.again),
    then('pause', 'resume'),
  ],
};

/** Lessons that are an order's, by their place: without one for this seat there is nothing to do. */
const BY_ORDER: Readonly<Record<Seat, readonly number[]>> = { panel: [0, 2], emitter: [0, 1, 2] };

/** Whether this lesson must wait: the order on the card is for the other seat, or for both, to hold. */
export function waitsForOrder(seat: Seat, lesson: number, entries: readonly Entry[]): boolean {
  const fact = entries.findLast((entry) => entry.fact.type === 'instruction')?.fact;
  return BY_ORDER[seat].includes(lesson) && fact?.type === 'instruction' && fact.advice.to !== seat;
}

/** The first lesson that is not learnt yet, counted from 0; undefined when all are. */
export function lessonNow(seat: Seat, entries: readonly Entry[]): number | undefined {
  const facts = entries.map(({ fact }) => fact);
  const next = LEARNT[seat].findIndex((isDone) => !isDone(facts));
  return next < 0 ? undefined : next;
}

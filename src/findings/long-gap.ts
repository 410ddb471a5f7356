import type { Entry } from '../model/entry.ts';
import { type Fact, SearchFact, Seat } from '../model/facts.ts';
import { LONG_GAP_MS } from '../model/finding.ts';
import { kindsOf } from '../model/kinds.ts';
import { found, type Look } from './look.ts';

/** What the crew read, turned or decided. Words alone, "roger", and noise are no work. */
const WORK: ReadonlySet<Fact['type']> = new Set<Fact['type']>([
  ...kindsOf(SearchFact, 'type'),
  'pause',
  'resume',
  'stopped',
  'restarted',
  'issue-closed',
]);

/** A photo may come long after it was taken, from a phone that had no link: it neither fills a gap nor makes one. */
const LATE: ReadonlySet<Fact['type']> = new Set<Fact['type']>(['photo', 'photo-removed']);

/** Much can happen in a long time without work that is not in the log. Talk does not fill it. */
export const longGap: Look = ({ entries, end: { signed } }) => {
  const crew = entries.filter(
    ({ actor, fact }) => Seat.options.some((seat) => seat === actor) && !LATE.has(fact.type),
  );
  const [first] = crew;
  // Talk at the end is a gap, too; after a signature it is a change.
  const last = crew.findLast(({ seq }) => !signed || seq < signed.seq);
  const marks = crew.filter((entry) => entry === first || entry === last || WORK.has(entry.fact.type));
  return marks.flatMap((entry, i) => {
    const before = marks[i - 1];
    const gap = before ? entry.at - before.at : 0;
    if (!before || gap <= LONG_GAP_MS) return [];
    const said = crew.filter((each) => isTalkBetween(each, before, entry)).length;
    const figures = { gap: gap / 1000, said };
    return [found('long-gap', { severity: 'question', entries: [before.seq, entry.seq], figures })];
  });
};

/** Talk that led to the work at the end of the gap belongs to that work. */
const isTalkBetween = ({ seq, fact }: Entry, before: Entry, after: Entry): boolean =>
  (fact.type === 'said' || fact.type === 'unheard') &&
  seq > before.seq &&
  seq <= after.seq &&
  !('from' in after.fact && after.fact.from === seq);

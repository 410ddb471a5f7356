import { lineFor } from '../../client/speak/script.ts';
import type { Entry } from '../../src/model/entry.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { randomPair } from '../../src/simulator/cases.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { playVisit } from '../../src/simulator/visit.ts';
import { quantile } from './align-table.ts';

/**
 * How many words the phone on the ladder says during a whole simulated alignment, from the first order to "accept". The
 * argument says how many alignments; case n is drawn from seed 5,000,000 + n, with a crew that does what it is asked.
 */
const cases = Number(process.argv[2] ?? 100);

interface Heard {
  words: number;
  turns: number;
  seconds: number;
  accepted: boolean;
  /** Words by the kind of entry. */
  by: Record<string, number>;
}

function heardIn(entries: readonly Entry[]): Heard {
  const by: Record<string, number> = {};
  const end = entries.findIndex(({ fact }) => fact.type === 'accept');
  const alignment = end < 0 ? entries : entries.slice(0, end + 1);
  for (const entry of alignment) {
    const { fact } = entry;
    const clock = { now: entry.at, offset: 0 };
    const kind = fact.type === 'instruction' ? `${fact.advice.action.kind} order` : fact.type;
    for (const event of lineFor(
      entry,
      'emitter',
      clock,
      fact.type === 'readback' ? { of: entries[fact.of] } : {},
    )) {
      if (event.on !== 'say') continue;
      by[kind] = (by[kind] ?? 0) + event.announcement.text.split(/\s+/).length;
    }
  }
  const from = alignment.find(({ fact }) => fact.type === 'instruction')?.at ?? 0;
  return {
    words: Object.values(by).reduce((sum, words) => sum + words, 0),
    turns: alignment.filter(({ fact }) => fact.type === 'move').length,
    seconds: ((alignment.at(-1)?.at ?? 0) - from) / 1000,
    accepted: end >= 0,
    by,
  };
}

function play(n: number): Heard | undefined {
  const spec = randomPair(createRng(5_000_000 + n));
  const setup = { site: 'Bench', pair: `${n}`, meter: spec.meter, adjusters: NEUTRAL_ADJUSTERS };
  try {
    const entries = playVisit({ job: `bench-${n}`.padEnd(10, '0'), setup, spec, from: 0, seed: n });
    return heardIn(entries);
  } catch {
    // Not ended in the steps of a visit.
    return undefined;
  }
}

const all = Array.from({ length: cases }, (_, n) => play(n));
const ended = all.filter((heard) => heard?.accepted).map((heard) => heard as Heard);
const of = (pick: (heard: Heard) => number): string =>
  [0.5, 0.95].map((share) => Math.round(quantile(ended.map(pick), share))).join(' / ');
console.log(`${ended.length} of ${cases} alignments accepted; median / 95th percentile of these:`);
console.log(`words heard on the ladder ${of(({ words }) => words)}`);
console.log(`turns ${of(({ turns }) => turns)}, seconds ${of(({ seconds }) => seconds)}`);
console.log(`words a turn ${of(({ words, turns }) => words / Math.max(1, turns))}`);
const kinds = [...new Set(ended.flatMap(({ by }) => Object.keys(by)))];
for (const kind of kinds) {
  const mean = ended.reduce((sum, { by }) => sum + (by[kind] ?? 0), 0) / ended.length;
  console.log(`  ${kind}: ${mean.toFixed(1)} words on average`);
}

import type { Voice } from '../../../src/model/voice.ts';
import { type ReadDigit, readDigit, voiceOf } from '../../../src/speech/voice.ts';
import { percent, SETS, share } from './figures-page.ts';
import type { Outcome } from './outcome.ts';
import { READING } from './readings.ts';
import type { Stranger } from './stranger.ts';

/** How far voices may lie apart; 0: a reading changes nothing. */
const SPREADS = [0, 0.25, 0.5, 1, 2, 4];

/** What a speaker read, and of which recordings. */
interface Read {
  digits: ReadDigit[];
  recordings: ReadonlySet<string>;
}

interface WithVoice {
  set: string;
  speaker: string;
  without: Outcome;
  /** With the spread that costs least on the other speakers. */
  within: Outcome;
  /** With the spread that ships. */
  shipped: Outcome;
}

const readingsOf = (heard: readonly Stranger[]): Map<string, Read> => {
  const all = new Map<string, Read>();
  for (const { set, speaker, text, weighing, recordings = [] } of heard) {
    if (set !== READING) continue;
    const { digits } = all.get(speaker) ?? { digits: [] };
    all.set(speaker, {
      digits: [...digits, readDigit(weighing, text)],
      recordings: new Set(recordings),
    });
  }
  return all;
};

/**
 * What a reading of ten digits changes, as a table: who read is judged on other recordings of theirs, each with a spread of voices chosen on the
 * other speakers. `outcomeOf`: what becomes of an utterance if this is known of the voice; `cost`: of such outcomes.
 */
export function voiceTable(
  heard: readonly Stranger[],
  outcomeOf: (one: Stranger, voice: Voice | undefined) => Outcome,
  cost: (outcomes: readonly Outcome[]) => number,
): string {
  const read = readingsOf(heard);
  const tested = heard.filter(({ set, speaker, recordings = [] }) => {
    const of = read.get(speaker);
    return set !== READING && of && !recordings.some((one) => of.recordings.has(one));
  });
  const speakers = [...new Set(tested.map(({ speaker }) => speaker))];
  const voice = (speaker: string, spread?: number): Voice | undefined =>
    spread === 0 ? undefined : voiceOf(read.get(speaker)?.digits ?? [], spread);
  const bySpread = SPREADS.map((spread) => tested.map((one) => outcomeOf(one, voice(one.speaker, spread))));
  const judged = tested.map((one, i): WithVoice => {
    const costs = bySpread.map((outcomes) =>
      cost(outcomes.filter((_, j) => tested[j]?.speaker !== one.speaker)),
    );
    return {
      set: one.set,
      speaker: one.speaker,
      without: outcomeOf(one, undefined),
      within: bySpread[costs.indexOf(Math.min(...costs))]?.[i] as Outcome,
      shipped: outcomeOf(one, voice(one.speaker)),
    };
  });
  const shifts = speakers.map((speaker) => {
    const right = read.get(speaker)?.digits.filter((digit) => digit.right).length ?? 0;
    return `${speaker} ${right}/10 ${voice(speaker)?.shift ?? 'not learnt'}`;
  });
  return `| what | speakers | n | right: without, with, as shipped | wrong: without, with, as shipped | worst speaker |
| --- | --- | --- | --- | --- | --- |
${Object.entries(SETS)
  .flatMap(([set, name]) =>
    row(
      name,
      judged.filter((one) => one.set === set),
    ),
  )
  .join('\n')}

Heard right of the ten, and the shift that ships: ${shifts.join('; ')}.
`;
}

const WAYS = ['without', 'within', 'shipped'] as const;

function row(name: string, all: readonly WithVoice[]): string[] {
  if (all.length === 0) return [];
  const of = (kind: Outcome): string[] =>
    WAYS.map((way) =>
      percent(
        share(
          all.map((one) => one[way]),
          kind,
        ),
      ),
    );
  const speakers = [...new Set(all.map(({ speaker }) => speaker))];
  const rights = speakers.map((speaker) => {
    const own = all.filter((one) => one.speaker === speaker);
    return {
      speaker,
      n: own.length,
      right: WAYS.map((way) =>
        share(
          own.map((one) => one[way]),
          'right',
        ),
      ),
    };
  });
  const [worst] = rights.sort((a, b) => (a.right[0] as number) - (b.right[0] as number));
  const cells = [
    name,
    speakers.length,
    all.length,
    of('right').join(', '),
    of('wrong').join(', '),
    worst && `${worst.speaker} (n ${worst.n}): ${worst.right.map(percent).join(', ')} right`,
  ];
  return [`| ${cells.join(' | ')} |`];
}

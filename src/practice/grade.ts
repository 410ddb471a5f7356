import type { Entry } from '../model/entry.ts';
import type { FactOf } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import type { Fate, Miss, Run, Trouble } from '../model/practice.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { Reading } from '../model/reading.ts';
import { AXES, type Axis } from '../model/turns.ts';
import { onReflection, shortfallDb } from '../simulator/pair.ts';
import { countedOf, EMPTY, fold, type JobState } from '../visit/state.ts';
import { type Hall, hallAfter } from './hall.ts';
import { shownBetween } from './meter.ts';

/** As much below the best nobody sees on a meter; from here on it is one, dB. */
export const OFF_PEAK_DB = 0.5;

/** So far back a person may have looked at the meter before the number arrives, ms. */
const LOOKED_MS = 8_000;

/** Undefined for a log that is not practice. */
export function gradeOf(entries: readonly Entry[]): Run | undefined {
  const walk = new Walk();
  for (const entry of entries) walk.next(entry);
  return walk.run();
}

class Walk {
  private hall: Hall | undefined;
  private state: JobState = EMPTY;
  private readonly pairs: { at: number; pair: Hall['pair'] }[] = [];
  private readonly times: number[] = [];
  private readonly missed = new Set<Miss>();
  private readonly wrong = new Set<Seq>();
  private began: number | undefined;
  private last = 0;
  private turns = 0;
  private readings = 0;
  private words = 0;
  private wasFlooded = false;
  private flooded = new Set<Seq>();
  private aimed = false;

  next(entry: Entry): void {
    if (this.state.accepted) return;
    const { fact, at, seq } = entry;
    this.hall = hallAfter(this.hall, entry);
    this.state = fold(this.state, entry);
    if (this.hall && this.hall.pair !== this.pairs.at(-1)?.pair)
      this.pairs.push({ at, pair: this.hall.pair });
    this.times.push(at);
    this.last = at;
    if (fact.type === 'instruction') this.began ??= at;
    if (fact.type === 'said') this.words += 1;
    if (fact.type === 'move') this.turns += 1;
    if (fact.type === 'practised' && fact.act.did === 'aim') this.aimed = true;
    if (fact.type === 're-aimed') {
      if (!this.aimed) this.missed.add('said-aimed');
      this.aimed = false;
    }
    if (fact.type === 'path') this.path(fact);
    if (fact.type === 'reading') this.reading(fact, seq, at);
  }

  private path({ state }: FactOf<'path'>): void {
    const blocked = this.hall?.pair.blocked ?? false;
    if (state === 'blocked' && !blocked) this.missed.add('said-blocked');
    if (state === 'clear' && blocked) this.missed.add('said-clear');
  }

  private reading({ reading, replaces }: FactOf<'reading'>, seq: Seq, at: number): void {
    this.readings += 1;
    if (!this.hall) return;
    const { from, setup } = this.hall;
    // A correction is about what was read then.
    const then = (replaces === undefined ? undefined : this.times[replaces]) ?? at;
    const shown = shownBetween(this.pairs, { from, since: Math.max(from, then - LOOKED_MS), until: at });
    const now = shown.at(-1);
    if (now?.kind === 'saturated') this.wasFlooded = true;
    if (shown.some((each) => isShown(reading, each, setup.meter))) return;
    this.wrong.add(seq);
    if (reading.kind === 'value' && shown.every(({ kind }) => kind === 'saturated')) this.flooded.add(seq);
  }

  run(): Run | undefined {
    const { hall, state, wrong, missed } = this;
    if (!hall) return undefined;
    const { accepted } = state;
    const counted = countedOf(state);
    const stands = (seq: Seq): boolean => counted.some((fact) => fact.seq === seq);
    if (accepted?.override) missed.add('overridden');
    if ([...wrong].some(stands)) missed.add('wrong-number-stood');
    if ([...this.flooded].some(stands)) missed.add('flooded-number');
    if (this.isTurnedOtherwise()) missed.add('wrong-turn-stood');
    const short = shortfallDb(hall.pair);
    if (accepted && onReflection(hall.pair)) missed.add('on-reflection');
    else if (accepted && short > OFF_PEAK_DB) missed.add('off-peak');
    return {
      accepted: accepted !== undefined,
      turns: this.turns,
      readings: this.readings,
      took: this.last - (this.began ?? this.last),
      words: this.words,
      wrong: wrong.size,
      putRight: [...wrong].filter((seq) => !stands(seq)).length,
      short,
      missed: ORDER.filter((miss) => missed.has(miss)),
      planted: (hall.setup.practice?.troubles ?? []).map((trouble) => ({
        trouble,
        fate: this.fateOf(trouble, missed),
      })),
    };
  }

  private fateOf(trouble: Trouble, missed: ReadonlySet<Miss>): Fate {
    const came = {
      flooded: this.wasFlooded,
      'wrong-way': this.hall?.slip !== undefined,
      reflection: this.hall?.pair.spec.lobes.some(({ reflected }) => reflected) ?? false,
      vibration: this.readings > 0,
      misheard: this.state.misheard ?? false,
    }[trouble];
    if (!came) return 'not-met-yet';
    if (MISSED_BY[trouble].some((miss) => missed.has(miss))) return 'missed';
    return this.state.accepted ? 'met' : 'not-met-yet';
  }

  /** Since the last aim by eye, or since it was known that nobody knows, the screws went otherwise than is written. */
  private isTurnedOtherwise(): boolean {
    const { hall, state } = this;
    if (!hall) return false;
    const counted = countedOf(state);
    const anew = counted.findLastIndex(({ type }) => type === 're-aimed' || type === 'disturbed');
    const since = counted.slice(anew + 1);
    const written = (axis: Axis): number =>
      since.reduce((sum, fact) => (fact.type === 'move' && fact.axis === axis ? sum + fact.eighths : sum), 0);
    // After "it was knocked" the count of the log begins anew, that of the screws does not.
    const known = counted[anew]?.type !== 'disturbed';
    return known && AXES.some((axis) => written(axis) !== hall.pair.turned[axis]);
  }
}

const ORDER: readonly Miss[] = [
  'overridden',
  'on-reflection',
  'off-peak',
  'flooded-number',
  'wrong-number-stood',
  'wrong-turn-stood',
  'said-blocked',
  'said-clear',
  'said-aimed',
];

/** What shows that a trouble was not seen. */
const MISSED_BY: Readonly<Record<Trouble, readonly Miss[]>> = {
  flooded: ['flooded-number'],
  'wrong-way': ['wrong-turn-stood'],
  reflection: ['on-reflection', 'said-blocked', 'said-clear'],
  vibration: ['off-peak'],
  misheard: ['wrong-number-stood'],
};

/** A number at either end of the meter says the same as the word for it; a number below the end is none while it is flooded. */
function isShown(said: Reading, shown: Reading, meter: MeterProfile): boolean {
  const { lostAt, saturatedAt, tolerance } = meter;
  const number = (reading: Reading): number =>
    reading.kind === 'value'
      ? Math.max(lostAt, Math.min(saturatedAt, reading.value))
      : reading.kind === 'none'
        ? lostAt
        : saturatedAt;
  const [heard, seen] = [number(said), number(shown)];
  if (seen === saturatedAt || heard === saturatedAt) return seen === heard;
  return Math.abs(heard - seen) <= 2 * tolerance;
}

import { emptyHead, headAfter, seal } from '../log/chain.ts';
import type { Draft, Entry } from '../model/entry.ts';
import { GUIDANCES } from '../model/guidance.ts';
import type { JobId } from '../model/ids.ts';
import type { PairId, PairPlan } from '../model/pair-plan.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../model/profile.ts';
import type { JobSetup } from '../model/setup.ts';
import { LOG_VERSION } from '../model/written.ts';
import { calmPair } from './calm-pair.ts';
import type { PairSpec } from './pair.ts';
import type { Plant } from './plants.ts';
import { playVisit } from './visit.ts';

/** An invented site of a dozen pairs. Some visits went well; others have planted faults. */
export const DEMO_SITE = 'Hollin Bridge sorting hall (invented)';

const meter = NEUTRAL_METERS.find(({ unit }) => unit === 'counts') as MeterProfile;

interface DemoPair {
  readonly id: PairId;
  readonly name: string;
  readonly pathLength: number;
  /** One list for each visit, of what goes wrong. */
  readonly visits: readonly (readonly Plant[])[];
  /** Level at full gain, dB over full scale. */
  readonly peakDb?: number;
  /** Light lost by each visit after the first, dB. The visits are then a year apart, the last with the other pairs'. */
  readonly lostDb?: readonly number[];
  /** The most that it may lose, dB. */
  readonly mostLoss?: number;
}

export const DEMO_PAIRS: readonly DemoPair[] = [
  { id: 'N1', name: 'North aisle 1', pathLength: 62, visits: [[]] },
  { id: 'N2', name: 'North aisle 2', pathLength: 62, visits: [['misread']] },
  { id: 'N3', name: 'North aisle 3', pathLength: 63, visits: [['takeover', 'long-gap']] },
  { id: 'N4', name: 'North aisle 4', pathLength: 62, visits: [[]], peakDb: -3.9 },
  { id: 'S1', name: 'South aisle 1', pathLength: 48, visits: [['hasty']] },
  { id: 'S2', name: 'South aisle 2', pathLength: 48, visits: [['drift']] },
  { id: 'S3', name: 'South aisle 3', pathLength: 49, visits: [['late-alarm']] },
  { id: 'S4', name: 'South aisle 4', pathLength: 48, visits: [['excused']] },
  { id: 'D1', name: 'Dock 1', pathLength: 27, visits: [[], ['left-unaccepted']] },
  { id: 'D2', name: 'Dock 2', pathLength: 31, visits: [['touched-since']] },
  { id: 'D3', name: 'Dock 3', pathLength: 36, visits: [['left-isolated', 'clock-back']] },
  { id: 'D4', name: 'Dock 4', pathLength: 41, visits: [['overridden']] },
];

/** Dust settles on it from year to year: at the third visit the limit is near. */
export const DUSTY_PAIR: DemoPair = {
  id: 'W1',
  name: 'West gate',
  pathLength: 34,
  visits: [[], [], []],
  // Weak enough for full gain: nobody turns it, so the readings of all visits can be compared.
  peakDb: -1.9,
  lostDb: [0.6, 1.2],
  mostLoss: 1.6,
};

const planOf = ({ id, name, pathLength, mostLoss }: DemoPair): PairPlan => ({
  id,
  name,
  zone: id.startsWith('D') ? '3' : id.startsWith('N') ? '1' : '2',
  pathLength,
  emitterHeight: 9.4,
  receiverHeight: 9.4,
  ceilingHeight: 9.9,
  spacing: 14,
  wallDistance: 7,
  meter,
  adjusters: NEUTRAL_ADJUSTERS,
  alarmThreshold: { unit: 'percent', value: 35 },
  alarmDelay: 10,
  faultDelay: 15,
  rangeMin: 5,
  rangeMax: 100,
  ...(mostLoss !== undefined && { mostLoss }),
});

const specOf = ({ peakDb = 3, lostDb = [] }: DemoPair, i: number, visit: number): PairSpec => ({
  ...calmPair(meter, { horizontal: 6 - (i % 5), vertical: (i % 4) - 5 }),
  peakDb: peakDb - (lostDb[visit - 1] ?? 0),
});

export interface DemoVisit {
  readonly pair: PairId;
  readonly job: JobId;
  readonly entries: readonly Entry[];
}

const hour = 3_600_000;
const year = 365 * 24 * hour;

/** When a crew sits down: the pairs of a day hour by hour, a second visit on the day after. */
const startOf = (from: number, { visits, lostDb }: DemoPair, i: number, visit: number): number =>
  lostDb ? from + i * hour - (visits.length - 1 - visit) * year : from + (i + 24 * visit) * hour;

/** The log of the site and of every visit. `from`: when the first crew of most pairs sits down, ms since 1970. */
export function playDemoSite(
  from: number,
  pairs: readonly DemoPair[] = DEMO_PAIRS,
): { site: readonly Entry[]; visits: readonly DemoVisit[] } {
  const begun = pairs.flatMap((pair, i) =>
    pair.visits.map((plants, visit) => ({ pair, i, visit, plants, at: startOf(from, pair, i, visit) })),
  );
  const site: Entry[] = [];
  let head = emptyHead('demo-site-hollin');
  const add = (fact: Draft['fact'], at: number): void => {
    const entry = seal(head, { actor: 'supervisor', fact }, at);
    head = headAfter(entry);
    site.push(entry);
  };
  const opened = Math.min(...begun.map(({ at }) => at)) - hour;
  const [code] = GUIDANCES;
  add({ type: 'site-opened', site: DEMO_SITE, ...(code && { code }), logVersion: LOG_VERSION }, opened);
  for (const pair of pairs) add({ type: 'pair-planned', pair: planOf(pair) }, opened);
  const jobOf = (pair: DemoPair, visit: number): JobId => `demo-${pair.id}-visit-${visit + 1}`;
  // The site's log is in the order of time.
  for (const { pair, visit, at } of begun.toSorted((a, b) => a.at - b.at)) {
    add({ type: 'job-begun', pair: pair.id, job: jobOf(pair, visit) }, at);
  }
  const visits = begun.map(({ pair, i, visit, plants, at }): DemoVisit => {
    const setup: JobSetup = {
      site: DEMO_SITE,
      pair: pair.name,
      meter,
      adjusters: NEUTRAL_ADJUSTERS,
      pathLength: pair.pathLength,
      scope: 'commissioning',
      plan: planOf(pair),
      ...(code && { guidance: code }),
    };
    const job = jobOf(pair, visit);
    const spec = specOf(pair, i, visit);
    return {
      pair: pair.id,
      job,
      entries: playVisit({ job, setup, spec, from: at, seed: i + 1, plants }),
    };
  });
  return { site, visits };
}

import { historyScene } from '../charts/history-scene.ts';
import type { VisitOutcome } from '../findings/outcome.ts';
import { signalHistory } from '../findings/signal-history.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import { FIRST_VISIT, gainAtText, HISTORY_COLUMNS, HISTORY_TABLE, lostText } from '../phrases/history.ts';
import { valueText } from '../phrases/readings.ts';
import type { Moments } from './moments.ts';
import type { Block } from './report.ts';

/** Pixels. */
const WIDTH = 690;
const PLOT = 120;

/** The signal that each visit left, drawn and in figures. Nothing for a pair with a single visit. */
export function historyBlocks(visits: readonly VisitOutcome[], plan: PairPlan, moments: Moments): Block[] {
  const points = signalHistory(visits);
  const meter = points.at(-1)?.meter;
  if (!meter || points.length < 2) return [];
  return [
    { kind: 'charts', charts: [historyScene({ meter, points }, plan, moments, WIDTH, PLOT)] },
    {
      kind: 'table',
      title: HISTORY_TABLE,
      columns: [
        { name: HISTORY_COLUMNS.day, share: 3 },
        { name: HISTORY_COLUMNS.signal, share: 2 },
        { name: HISTORY_COLUMNS.gain, share: 2 },
        { name: HISTORY_COLUMNS.lost, share: 3 },
      ],
      empty: '',
      rows: points.map(({ at, value, gain, lost }, index) => [
        moments.day(at),
        `${valueText(value, meter)} ${meter.unit}`,
        gainAtText(gain),
        index === 0 ? FIRST_VISIT : lostText(lost),
      ]),
    },
  ];
}

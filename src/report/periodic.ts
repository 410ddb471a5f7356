import { figuresText } from '../phrases/figures.ts';
import { HEADINGS } from '../phrases/headings.ts';
import { itemText } from '../phrases/items.ts';
import { readingWithUnit } from '../phrases/readings.ts';
import { shownFor } from '../phrases/units.ts';
import {
  ALIGNED_ROW,
  KEPT_ROW,
  lastLeftText,
  NOT_ALIGNED_ROW,
  NOT_READ,
  NOTHING_TO_COMPARE,
  PERIODIC_ROWS,
} from '../phrases/visits.ts';
import type { Commission } from '../visit/commission.ts';
import { isPeriodic } from '../visit/commission.ts';
import { type CareReading, careReadings, cleaning, comparedWithLast } from '../visit/periodic.ts';
import type { Visit } from '../visit/visit.ts';
import type { Moments } from './moments.ts';
import type { Block, Fact } from './report.ts';

/** What a periodic visit found, compared, cleaned and kept. Nothing for any other visit. */
export function periodicBlocks({ commission, end }: Visit, moments: Pick<Moments, 'day'>): Block[] {
  if (!isPeriodic(commission)) return [];
  const { setup } = commission;
  const { found, cleaned } = careReadings(commission);
  const clean = cleaning(commission);
  const { accepted } = end;
  const rows: Fact[] = [
    {
      name: PERIODIC_ROWS.last,
      value: setup.lastLeft
        ? lastLeftText(setup.lastLeft, moments.day(setup.lastLeft.at), setup.meter)
        : NOTHING_TO_COMPARE,
    },
    { name: PERIODIC_ROWS.found, value: readText(commission, found) },
    { name: PERIODIC_ROWS.clean, value: clean ? `${itemText(clean)}, #${clean.seq}` : NOT_READ },
    ...(clean?.done ? [{ name: PERIODIC_ROWS.cleaned, value: readText(commission, cleaned) }] : []),
    {
      name: PERIODIC_ROWS.outcome,
      value: accepted ? `${accepted.kept ? KEPT_ROW : ALIGNED_ROW}, #${accepted.seq}` : NOT_ALIGNED_ROW,
    },
  ];
  return [{ kind: 'facts', title: HEADINGS.periodic, rows }];
}

/** "41 percent, #31 (0.2 dB less light)" */
function readText(commission: Commission, read: CareReading | undefined): string {
  if (!read) return NOT_READ;
  const { setup } = commission;
  const { lostSince } = comparedWithLast(commission, read);
  const since =
    lostSince === undefined ? '' : ` (${figuresText({ lostSince }, setup.meter, shownFor(setup))})`;
  return `${readingWithUnit(read.reading, setup.meter)}, #${read.seq}${since}`;
}

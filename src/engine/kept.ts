import type { Reading } from '../model/reading.ts';
import { doubt } from './doubt.ts';
import { fallFigure, isBeamMoved } from './fall.ts';
import { FRESH_MS } from './fresh.ts';
import { isSaturated } from './level.ts';
import type { Missing } from './missing.ts';
import type { Search } from './search.ts';
import { look } from './view.ts';

/**
 * What is missing here and now to keep the alignment as an earlier visit left it, at the reading `before`; empty if
 * nothing is. More light than before is no loss. Of a meter of unknown law any fall beyond its tolerance counts.
 */
export function missingToKeep(search: Search, before: Reading, now: number): Missing[] {
  const view = look(search);
  const { here } = view;
  const { meter } = search;
  const missing: Missing[] = [];
  if (isTouched(search)) missing.push({ id: 'untouched', figures: {} });
  if (search.path !== 'clear') return [...missing, { id: 'clear-path', figures: {} }];
  if (!here) return [...missing, { id: 'settled-reading', figures: {} }];
  if (doubt(view)) missing.push({ id: 'settled-doubt', figures: {} });
  if (isSaturated(here.reading, meter)) missing.push({ id: 'not-saturated', figures: {} });
  else if (isBeamMoved(before, here.reading, meter)) {
    missing.push({ id: 'as-last-left', figures: comparison(before, here.reading, search) });
  }
  const held = here.to - here.from;
  if (held < meter.holdMs) {
    missing.push({ id: 'steady-hold', figures: { held: held / 1000, needed: meter.holdMs / 1000 } });
  }
  if (now - here.to > FRESH_MS)
    missing.push({ id: 'fresh-reading', figures: { age: (now - here.to) / 1000 } });
  return missing;
}

/** Something was turned, set or aimed on this visit: then the alignment is not that of the last one. */
export const isTouched = ({ moves, gain, aims, restarts }: Search): boolean =>
  moves > 0 || gain > 0 || aims > 0 || restarts > 0;

/** Both readings, and the light lost between them, dB, where the meter can tell. */
export function comparison(before: Reading, now: Reading, { meter }: Search): Record<string, number> {
  // Flooded, it says only "at least this much".
  const { fall } = isSaturated(now, meter) ? {} : fallFigure(before, now, meter);
  return {
    ...(now.kind === 'value' && { reading: now.value }),
    ...(before.kind === 'value' && { lastLeft: before.value }),
    ...(fall !== undefined && { lostSince: fall }),
  };
}

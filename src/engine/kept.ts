import type { Reading } from '../model/reading.ts';
import { FRESH_MS } from './accept.ts';
import { doubt } from './doubt.ts';
import { isSaturated, toLevel } from './level.ts';
import type { Missing } from './missing.ts';
import type { Search } from './search.ts';
import { agree } from './stay.ts';
import { look } from './view.ts';

/** Light lost since the last visit, beyond which the alignment is not kept, dB. Common practice, no source. */
export const KEPT_FALL_DB = 0.5;

/** Figures are entered as decimals: a tiny binary rounding error must not count. */
const ROUNDING_DB = 1e-9;

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
  else if (isFallen(before, here.reading, search)) {
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

function isFallen(before: Reading, now: Reading, { meter }: Search): boolean {
  if (agree(before, now, meter)) return false;
  const [was, is] = [toLevel(before, meter), toLevel(now, meter)];
  if (was.kind !== 'level') return true;
  if (is.kind !== 'level') return is.kind === 'below';
  if (meter.law === 'unknown') return is.db < was.db;
  return was.db - is.db > KEPT_FALL_DB + ROUNDING_DB;
}

/** Both readings, and the light lost between them, dB, where the meter can tell. */
export function comparison(before: Reading, now: Reading, { meter }: Search): Record<string, number> {
  const [was, is] = [toLevel(before, meter), toLevel(now, meter)];
  const known = meter.law !== 'unknown' && was.kind === 'level' && is.kind === 'level';
  return {
    ...(now.kind === 'value' && { reading: now.value }),
    ...(before.kind === 'value' && { lastLeft: before.value }),
    ...(known && { lostSince: was.db - is.db }),
  };
}

import { blockingPassed, evidenceSeqs, missingForAccept } from './accept.ts';
import { advice, type TimedAdvice } from './advice.ts';
import type { Missing } from './missing.ts';
import { CAUSES } from './rules.ts';
import type { Search } from './search.ts';
import type { View } from './view.ts';

const AT_THE_END: ReadonlySet<Missing['id']> = new Set(['blocking-check', 'steady-hold', 'fresh-reading']);

export function finished({ search }: View): TimedAdvice | undefined {
  return search.accepted && advice('finished', { kind: 'finished' });
}

/** So many aims by eye have not brought the beam into the line: another would not either. */
const MOST_BEHIND_CARD = 2;

/** The light stayed when the direct path was blocked: aim again. If it stays again and again, aiming is not the cure. */
export function reflected({ search, here }: View): TimedAdvice | undefined {
  if (search.blocking.dark !== false) return undefined;
  if (search.looked.behindCard >= MOST_BEHIND_CARD)
    return advice('light-stays', { kind: 'check', causes: [...CAUSES.behindCard] }, [
      search.blocking.before,
      here,
    ]);
  return advice('not-by-reflection', { kind: 're-aim' }, [search.blocking.before, here]);
}

/** Everything that the screws must prove is there. */
export const atTheEnd = (search: Search, now: number): boolean =>
  missingForAccept(search, now).every(({ id }) => AT_THE_END.has(id));

/** Blocked only when everything that the screws must prove is there. */
export function blockingCheck({ search, here }: View, now: number): TimedAdvice | undefined {
  if (!here || !atTheEnd(search, now) || blockingPassed(search, here)) return undefined;
  return advice('blocking-check', { kind: 'block' }, [here]);
}

export function holdSteady({ search, here }: View, now: number): TimedAdvice | undefined {
  if (!here || here.to - here.from >= search.meter.holdMs) return undefined;
  const until = here.from + search.meter.holdMs;
  const figures = { held: (here.to - here.from) / 1000, needed: search.meter.holdMs / 1000 };
  if (now < until)
    return advice('hold-steady', { kind: 'hold', reason: 'proving-steady', until }, [here], figures);
  return advice('hold-steady', { kind: 'read' }, [here], figures);
}

export function offer(view: View, now: number): TimedAdvice | undefined {
  const { search, here } = view;
  if (!here || missingForAccept(search, now).length > 0) return undefined;
  const { advice: offered } = advice('offer-accept', { kind: 'offer-accept' }, [here]);
  return { advice: { ...offered, because: evidenceSeqs(view, here) } };
}

import { advice, type TimedAdvice } from './advice.ts';
import { CAUSES } from './rules.ts';
import { WANDERING_BREAKS } from './stay.ts';
import type { View } from './view.ts';

/** The path is covered: for the blocking check, or by accident. */
export function coveredPath({ search }: View, now: number): TimedAdvice | undefined {
  if (search.path === 'clear') return undefined;
  const checking = search.path === 'blocked' && (search.blocking.before !== undefined || search.walk);
  // Of a person who walks, two numbers behind the card are enough: what they do not tell is told with a number before it.
  const isRead = search.blocking.dark !== undefined || (search.walk && search.stay.run.length > 1);
  if (!checking || isRead) return advice('free-path', { kind: 'unblock' });
  const last = search.stay.run[search.stay.run.length - 1];
  const since = last?.at ?? search.stay.since;
  return settling(since + search.meter.settleMs, now) ?? advice('blocking-check', { kind: 'read' });
}

/** No settled reading here yet: wait, then read. */
export function unsettled({ search, here }: View, now: number): TimedAdvice | undefined {
  const { stay, meter } = search;
  if (stay.breaks >= WANDERING_BREAKS)
    return advice('wandering', { kind: 'check', causes: [...CAUSES.wandering] });
  if (here) return undefined;
  const last = search.samples[search.samples.length - 1];
  return settling(stay.since + meter.settleMs, now) ?? advice('read', { kind: 'read' }, [last]);
}

const settling = (until: number, now: number): TimedAdvice | undefined =>
  now < until ? advice('settle', { kind: 'hold', reason: 'settling', until }) : undefined;

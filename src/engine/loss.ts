import type { Question } from '../model/advice.ts';
import type { MeterProfile } from '../model/profile.ts';
import { advice, type TimedAdvice } from './advice.ts';
import { isCoarse, isLess, lossDb, RETURN, turnsBetween } from './came-back.ts';
import { lostDb } from './level.ts';
import { isSamePlace } from './place.ts';
import type { Sample } from './sample.ts';
import type { Search } from './search.ts';
import type { View } from './view.ts';

/** Light that does not come back, and the turns that are asked about then. */

interface Loss {
  readonly before: Sample;
  /** The first reading at the place after it. */
  readonly after: Sample;
}

/** What was lost at the place here, near the top: since the newest reading there that was brighter. */
function lossAt(read: readonly Sample[], here: Sample, meter: MeterProfile): Loss | undefined {
  const top = Math.max(...read.map(({ level }) => (level.kind === 'level' ? level.db : lostDb(meter))));
  const there = [...read.filter((s) => isSamePlace(s.turned, here.turned)), here];
  const i = there.findLastIndex((s) => top - s.level.db < RETURN.within && isLess(here, s, meter));
  const [before, after] = [there[i], there[i + 1]];
  return before && after && { before, after };
}

/** By how much the light itself is known to change: it was lost though every turn in between was said to be right. dB. */
function ownChange(read: readonly Sample[], { meter, confirmed }: Search): number {
  const lost = read.map((now, i) => {
    const j = read.findLastIndex((s, k) => k < i && isSamePlace(s.turned, now.turned));
    const before = read[j];
    const turned = read.slice(j + 1, i + 1);
    const isSure = turned.every(({ move }) => move && confirmed.includes(move.seq));
    return before && isSure && isLess(now, before, meter) ? lossDb(before, now) : 0;
  });
  return Math.max(0, ...lost);
}

/**
 * A place near the top reads less than it did: each turn made since, the newest first, is asked about, until all are
 * sure. Only then may the light itself have changed; and what it is known to change by is not asked about again, unless
 * the meter is too coarse to tell it from a slip. With a model only such a meter needs it: the others contradict the beam.
 */
export function lostOnReturn({ search, here }: View): TimedAdvice | undefined {
  if (!here) return undefined;
  const { meter, made, confirmed } = search;
  const since = Math.max(search.floor?.since ?? 0, search.restartedAt);
  const read = search.samples.filter((s) => s.gain === here.gain && (s.seqs[0] ?? 0) >= since);
  const lost = lossAt(read, here, meter);
  if (!lost) return undefined;
  const { before, after } = lost;
  const newer = turnsBetween(after, here);
  const unsure = made.findIndex(
    ({ seq, corrected }, i) =>
      i >= newer && i < newer + turnsBetween(before, after) && !corrected && !confirmed.includes(seq),
  );
  const asked = made[unsure];
  if (!asked) return undefined;
  if (!isCoarse(before, meter)) {
    if (!search.floor || lossDb(before, here) <= ownChange(read, search) + RETURN.missesBy) return undefined;
  }
  if (here.seqs.length < 2) return advice('read-twice', { kind: 'read' }, [before, here]);
  const ago = unsure > 0 ? { ago: unsure + 1 } : {};
  const question: Question = { kind: 'which-move', about: asked.seq, options: [asked.turn], ...ago };
  return advice('doubt-turn', { kind: 'ask', question }, [before, here]);
}

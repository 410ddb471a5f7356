import { isSamePlace } from './place.ts';
import type { Sample } from './sample.ts';

/** What a change of the gain did to the readings, dB. */
interface Step {
  readonly db: number;
  readonly sd: number;
}

/**
 * The readings as they would be at `gain`. A change of the gain is known where the same place was read just before it and
 * just after: then the older readings count as if they were taken at this gain, each less certain by what the change is.
 * Those before a change that was not read so are left out, and those of a flooded meter.
 */
export function inGain(samples: readonly Sample[], gain: number): readonly Sample[] {
  const steps = new Map<number, Step>([[gain, { db: 0, sd: 0 }]]);
  for (let older = gain - 1; ; older--) {
    const after = steps.get(older + 1);
    const change = changeAfter(samples, older);
    if (!after || !change) break;
    steps.set(older, { db: after.db + change.db, sd: Math.hypot(after.sd, change.sd) });
  }
  return samples.flatMap((s) => {
    const step = steps.get(s.gain);
    if (!step) return [];
    return s.gain === gain ? [s] : moved(s, step, gain);
  });
}

function changeAfter(samples: readonly Sample[], older: number): Step | undefined {
  const before = samples.findLast((s) => s.gain === older);
  const after = samples.find((s) => s.gain === older + 1);
  if (before?.level.kind !== 'level' || after?.level.kind !== 'level') return undefined;
  if (!isSamePlace(before.turned, after.turned)) return undefined;
  return { db: after.level.db - before.level.db, sd: Math.hypot(before.level.sd, after.level.sd) };
}

// It must be the same object every time, so that what was learnt with it stays valid.
const known = new WeakMap<Sample, { readonly step: Step; readonly gain: number; readonly moved: Sample }>();

function moved(s: Sample, step: Step, gain: number): Sample[] {
  const { level } = s;
  if (level.kind === 'above') return [];
  const before = known.get(s);
  if (before?.gain === gain && before.step.db === step.db && before.step.sd === step.sd)
    return [before.moved];
  const { db, sd } = step;
  const at =
    level.kind === 'level'
      ? { kind: 'level' as const, db: level.db + db, sd: Math.hypot(level.sd, sd) }
      : { kind: 'below' as const, db: level.db + db };
  const there = { ...s, gain, level: at };
  known.set(s, { step, gain, moved: there });
  return [there];
}

import { createHash } from 'node:crypto';
import { digest, newToken } from '../../../server/guard/secrets.ts';
import { bodyOf, GENESIS } from '../../../src/log/chain.ts';
import type { Entry } from '../../../src/model/entry.ts';
import type { JobId } from '../../../src/model/ids.ts';
import { randomPair } from '../../../src/simulator/cases.ts';
import { LoggedJob } from '../../../src/simulator/logged-job.ts';
import { createBeamPair } from '../../../src/simulator/pair.ts';
import { createRng } from '../../../src/simulator/rng.ts';
import { SETUP } from '../../server/phone.ts';
import { type Aligning, nextSaying } from './aligning.ts';

/** What the three phones of a crew come in with. */
export interface CrewKeys {
  readonly job: JobId;
  readonly panel: string;
  readonly emitter: string;
  readonly watcher: string;
  /** Where the crew is in its alignment. */
  readonly aligning: Aligning;
}

/** It ended so long ago that nothing of it is still due, ms. */
const AGO_MS = 3_600_000;
/** Between two sentences, ms. */
const PACE_MS = 3_000;
const SEED = 1_009;

interface Pattern {
  readonly entries: readonly (readonly [string, string, string])[];
  readonly aligning: Aligning;
}

/** A crew aligns a random pair until its log has at least so many entries. */
function alignment(length: number, seed: number): Pattern {
  const rng = createRng(seed);
  const spec = randomPair(rng);
  const setup = { ...SETUP, meter: spec.meter };
  const job = new LoggedJob('bench-pattern', Date.now() - AGO_MS - length * PACE_MS);
  const began = job.now;
  job.input({ kind: 'open', setup });
  for (const seat of ['panel', 'emitter'] as const)
    job.input({ kind: 'seated', seat, device: `${seat} phone`, takeover: false });
  let aligning: Aligning = { setup, pair: createBeamPair(spec), at: 0 };
  while (job.entries.length < length) {
    const { seat, text, pair } = nextSaying(aligning, job.state.instruction?.advice.action, rng);
    job.say(seat, text);
    job.wait(PACE_MS);
    aligning = { setup, pair, at: job.now - began };
  }
  return { entries: job.entries.map(aroundNames), aligning };
}

/** The body of an entry without the name of its job and the hash before it, which stand in this order. */
function aroundNames(entry: Entry): readonly [string, string, string] {
  const [before = '', rest = ''] = bodyOf(entry).split(entry.job);
  const [between = '', after = ''] = rest.split(entry.prev);
  return [before, between, after];
}

/** A log as it is laid down, and what its crew comes in with. */
export interface LaidJob {
  readonly keys: CrewKeys;
  readonly entries: readonly { readonly hash: string; readonly body: string }[];
}

/**
 * Jobs whose logs are this long, one after the other: all of them at once would not go into the memory. They align so many
 * different `pairs`; the crews of one pair are at the same place of it, and come to what is hard together.
 */
export function* laidJobs(jobs: number, length: number, pairs: number): Generator<LaidJob> {
  const patterns = Array.from({ length: Math.min(pairs, jobs) }, (_, n) => alignment(length, SEED + n));
  for (let i = 0; i < jobs; i++) {
    const job = `bench-${String(i).padStart(8, '0')}`;
    const pattern = patterns[i % patterns.length] as Pattern;
    let prev = GENESIS;
    const entries = pattern.entries.map((around) => {
      const body = `${around[0]}${job}${around[1]}${prev}${around[2]}`;
      prev = createHash('sha256').update(body).digest('hex');
      return { hash: prev, body };
    });
    const { aligning } = pattern;
    yield { keys: { job, panel: newToken(), emitter: newToken(), watcher: newToken(), aligning }, entries };
  }
}

/** The passes of one job, as a store keeps them. */
export const passesOf = (keys: CrewKeys): { token: string; role: 'panel' | 'emitter' | 'watcher' }[] =>
  (['panel', 'emitter', 'watcher'] as const).map((role) => ({ token: digest(keys[role]), role }));

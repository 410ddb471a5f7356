import type { Input, Response } from '../conversation/input.ts';
import type { Entry } from '../model/entry.ts';
import type { Seat } from '../model/facts.ts';
import type { MessageId } from '../model/ids.ts';
import { PRACTICE_JOB, type Practice } from '../model/practice.ts';
import { LoggedJob } from '../simulator/logged-job.ts';
import type { JobState } from '../visit/state.ts';
import { AGAIN_MS, type Deed, nextDeed } from './colleague.ts';
import { type Hall, hallAfter } from './hall.ts';
import { practiceSetup } from './pair.ts';

/**
 * A practice job without a server, on a clock that is set from outside. `simulated`: the seats that colleagues play; a
 * person has the others.
 */
export class Play {
  private readonly job: LoggedJob;
  private hall: Hall | undefined;
  private folded = 0;
  /** The last instruction that was acted on, and when. */
  private readonly done: Partial<Record<Seat, { seq: number; at: number }>> = {};

  constructor(
    practice: Practice,
    private readonly simulated: readonly Seat[],
    now: number,
  ) {
    this.job = new LoggedJob(PRACTICE_JOB, now);
    this.job.input({ kind: 'open', setup: practiceSetup(practice) });
    for (const seat of ['panel', 'emitter'] as const)
      this.job.input({ kind: 'seated', seat, device: '', takeover: false });
  }

  get entries(): readonly Entry[] {
    return this.job.entries;
  }
  get state(): JobState {
    return this.job.state;
  }
  get head(): LoggedJob['head'] {
    return this.job.head;
  }
  get now(): number {
    return this.job.now;
  }

  take(input: Input, ref?: MessageId): Response {
    return this.job.take(input, ref);
  }

  /** Lets time pass up to `now`, with what the rules and the colleagues do meanwhile. */
  passTo(now: number): void {
    for (let deed = this.due(now); deed; deed = this.due(now)) {
      this.job.wait(Math.max(0, deed.at - this.job.now));
      // Something may have changed while it waited.
      if (this.due(this.job.now)) this.carryOut(deed);
    }
    this.job.wait(Math.max(0, now - this.job.now));
  }

  private due(now: number): Deed | undefined {
    const hall = this.look();
    if (!hall) return undefined;
    const deeds = this.simulated
      .map((seat) => nextDeed(seat, this.state, hall))
      .filter((deed) => deed !== undefined)
      .map((deed) => ({ ...deed, at: Math.max(deed.at, this.notBefore(deed.seat)) }));
    return deeds.filter(({ at }) => at <= now).sort((a, b) => a.at - b.at)[0];
  }

  private notBefore(seat: Seat): number {
    const before = this.done[seat];
    return before && before.seq === this.state.instruction?.seq ? before.at + AGAIN_MS : 0;
  }

  private carryOut({ seat, acts, says }: Deed): void {
    const re = this.state.instruction?.seq;
    if (re !== undefined) this.done[seat] = { seq: re, at: this.job.now };
    for (const act of acts) this.job.input({ kind: 'practise', seat, act });
    this.job.say(seat, says);
  }

  private look(): Hall | undefined {
    for (const entry of this.entries.slice(this.folded)) this.hall = hallAfter(this.hall, entry);
    this.folded = this.entries.length;
    return this.hall;
  }
}

/** A crew that has not ended by then is lost, and so would a person be, ms. */
const LONGEST_MS = 15 * 60_000;
const STEP_MS = 5_000;

/** A simulated crew plays both seats of the job, and does what it is asked; some seconds of it at each step. Gives the log. */
export function* crewAtWork(practice: Practice): Generator<undefined, readonly Entry[]> {
  const play = new Play(practice, ['panel', 'emitter'], 0);
  while (!play.state.accepted && play.now < LONGEST_MS) {
    play.passTo(play.now + STEP_MS);
    yield;
  }
  return play.entries;
}

/** The same at once. */
export function playedByCrew(practice: Practice): readonly Entry[] {
  const work = crewAtWork(practice);
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
  }
}

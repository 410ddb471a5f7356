import { expect } from 'vitest';
import type { Input } from '../../src/conversation/input.ts';
import { respond } from '../../src/conversation/respond.ts';
import type { Fact, FactOf, Seat } from '../../src/model/facts.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { EMPTY, fold, type JobState } from '../../src/visit/state.ts';

const meterIn = (unit: string) => NEUTRAL_METERS.find((meter) => meter.unit === unit) as MeterProfile;
export const VOLTS = meterIn('volts');
export const COUNTS = meterIn('counts');
export const DECIBELS = meterIn('dB');

/** A job played on the table: no server, no clock, the facts in a plain list. */
export class TableJob {
  state: JobState = EMPTY;
  readonly facts: Fact[] = [];
  now = 1_800_000_000_000;
  wakeAt: number | undefined;

  /** A job with both phones in their seats. */
  static crewed(meter: MeterProfile = COUNTS): TableJob {
    const job = new TableJob();
    job.open(meter);
    job.input({ kind: 'seated', seat: 'panel', device: '', takeover: false });
    job.input({ kind: 'seated', seat: 'emitter', device: '', takeover: false });
    return job;
  }

  open(meter: MeterProfile): void {
    const setup = { site: 'Quayside Hall 3', pair: 'B2', meter, adjusters: NEUTRAL_ADJUSTERS };
    this.input({ kind: 'open', setup });
  }

  /** Gives one input and returns the facts it led to; throws on a refusal. */
  input(input: Input): Fact[] {
    const response = respond(this.state, input, this.now);
    if (response.kind === 'refused') throw new Error(`${response.reason}: ${response.text}`);
    for (const { actor, fact } of response.drafts) {
      this.state = fold(this.state, { seq: this.facts.length, at: this.now, actor, fact });
      this.facts.push(fact);
    }
    // What the rules saw is what the log says: the fold of what was put down.
    expect(response.state).toEqual(this.state);
    this.wakeAt = response.wakeAt;
    return response.drafts.map((draft) => draft.fact);
  }

  say(seat: Seat, text: string, re?: number): Fact[] {
    return this.input({ kind: 'words', seat, via: 'typed', text, ...(re !== undefined && { re }) });
  }

  hears(seat: Seat, text: string, confidence: number, others: [string, number][] = []): Fact[] {
    const alternatives = [[text, confidence] as const, ...others].map(([t, c]) => ({
      text: t,
      confidence: c,
    }));
    return this.input({ kind: 'words', seat, via: 'voice', text, confidence, alternatives });
  }

  /** Lets time pass, waking the job as the server would. */
  wait(ms: number): void {
    const end = this.now + ms;
    while (this.wakeAt !== undefined && this.wakeAt <= end) {
      this.now = Math.max(this.now, this.wakeAt);
      this.input({ kind: 'tick' });
    }
    this.now = end;
  }

  get action() {
    return this.state.instruction?.advice.action;
  }

  /** The turn that is asked for now. */
  get turn() {
    const { instruction } = this.state;
    const action = instruction?.advice.action;
    if (!instruction || action?.kind !== 'turn') throw new Error(`no turn is asked for, but ${action?.kind}`);
    return { seq: instruction.seq, axis: action.axis, eighths: action.eighths };
  }
}

export const ofType = <T extends Fact['type']>(facts: Fact[], type: T): FactOf<T>[] =>
  facts.filter((fact): fact is FactOf<T> => fact.type === type);

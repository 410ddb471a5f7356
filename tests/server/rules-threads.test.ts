import { afterAll, describe, expect, it, onTestFinished } from 'vitest';
import { type Decision, RULES_HERE, type Rules } from '../../server/jobs/rules.ts';
import { RulesInThreads } from '../../server/jobs/rules-threads.ts';
import type { Input } from '../../src/conversation/input.ts';
import type { Draft } from '../../src/model/entry.ts';
import type { Seat } from '../../src/model/facts.ts';
import { EMPTY, fold, type JobState } from '../../src/visit/state.ts';
import { SETUP } from './phone.ts';

const threads = new RulesInThreads(2);
afterAll(() => threads.close());

/** A job as a room has it: decided, stored, and only then the state. */
class Played {
  state: JobState = EMPTY;
  now = 1_000;

  constructor(
    readonly rules: Rules,
    readonly job: string,
  ) {}

  decide(input: Input): Promise<Decision> {
    this.now += 20_000;
    return this.rules.respond(this.job, this.state, input, this.now);
  }

  store(decision: Decision): readonly Draft[] {
    if (decision.kind === 'refused') return [];
    for (const { actor, fact } of decision.drafts)
      this.state = fold(this.state, { seq: this.state.count, at: this.now, actor, fact });
    this.rules.stored(this.job, this.state);
    return decision.drafts;
  }

  async take(input: Input): Promise<readonly Draft[]> {
    return this.store(await this.decide(input));
  }

  say(seat: Seat, text: string): Promise<readonly Draft[]> {
    const re = this.state.instruction?.seq;
    return this.take({ kind: 'words', seat, via: 'typed', text, ...(re !== undefined && { re }) });
  }

  async begin(): Promise<this> {
    await this.take({ kind: 'open', setup: SETUP });
    for (const seat of ['panel', 'emitter'] as const)
      await this.take({ kind: 'seated', seat, device: `${seat} phone`, takeover: false });
    return this;
  }
}

const WORDS = [
  '30',
  'done',
  '42',
  'done',
  'undo',
  '38',
  '38',
  'done',
  'nonsense',
  '44',
  'wait',
  'go on',
  '51',
  'done',
];
const seatOf = (text: string): Seat => (/^\d/.test(text) ? 'panel' : 'emitter');

describe('the rules in threads of their own', () => {
  it('decide what they decide in the thread of the sockets, job after job', async () => {
    const here = await new Played(RULES_HERE, 'job-here-0001').begin();
    const there = await Promise.all(
      [1, 2, 3, 4].map((n) => new Played(threads, `job-there-000${n}`).begin()),
    );
    for (const text of WORDS) {
      const drafts = await here.say(seatOf(text), text);
      expect(drafts.length).toBeGreaterThan(0);
      for (const each of await Promise.all(there.map((job) => job.say(seatOf(text), text))))
        expect(each).toEqual(drafts);
    }
  });

  it('forget what they decided when it could not be stored', async () => {
    const job = await new Played(threads, 'job-not-stored').begin();
    const { state, now } = job;
    const lost = await job.decide({ kind: 'words', seat: 'panel', via: 'typed', text: '30' });
    job.now = now;
    const again = await job.decide({ kind: 'words', seat: 'panel', via: 'typed', text: '30' });
    expect(again).toEqual(lost);
    job.store(again);
    expect(job.state.reading?.reading).toEqual({ kind: 'value', value: 30 });
    expect(job.state.count).toBeGreaterThan(state.count);
  });

  it('take the state that the log has now, where another process has added to it', async () => {
    const job = await new Played(threads, 'job-read-on').begin();
    await job.say('panel', '30');
    const other = new Played(RULES_HERE, 'job-read-on');
    Object.assign(other, { state: job.state, now: job.now });
    await other.say('emitter', 'wait');
    job.state = other.state;
    job.now = other.now;
    expect(await job.say('emitter', 'go on')).toEqual(await other.say('emitter', 'go on'));
  });

  it('a long job goes to its thread whole', async () => {
    const job = await new Played(RULES_HERE, 'job-long-0001').begin();
    for (let i = 0; i < 10_000; i++)
      job.state = fold(job.state, {
        seq: job.state.count,
        at: job.now++,
        actor: 'panel',
        fact: { type: 'reading', reading: { kind: 'value', value: 30 } },
      } as Parameters<typeof fold>[1]);
    const there = new Played(threads, job.job);
    Object.assign(there, { state: job.state, now: job.now });
    expect(await there.say('panel', '31')).toEqual(await job.say('panel', '31'));
  });

  it('come again when their thread has ended, and what it worked on is refused to be sent again', async () => {
    const rules = new RulesInThreads(1);
    onTestFinished(() => rules.close());
    const job = await new Played(rules, 'job-thread-end').begin();
    const lost = job.decide({ kind: 'words', seat: 'panel', via: 'typed', text: '30' });
    await Promise.all([rules.close(), expect(lost).rejects.toThrow('the thread of the rules has ended')]);
    expect(await job.say('panel', '31')).not.toEqual([]);
  });

  it('say that they failed, and decide the next input', async () => {
    const job = await new Played(threads, 'job-failing-01').begin();
    await expect(job.decide({ kind: 'words', seat: 'panel' } as Input)).rejects.toThrow('the rules failed');
    expect(await job.say('panel', '30')).not.toEqual([]);
  });
});

import type { Fact } from '../../src/model/facts.ts';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { COUNTS, ofType, TableJob } from '../conversation/table.ts';

export const PLAN: PairPlan = {
  id: 'B2',
  name: 'North aisle',
  zone: '7',
  alarmThreshold: { unit: 'percent', value: 35 },
  alarmDelay: 10,
  faultDelay: 20,
};

/** A commissioning played on the table, whose alignment is short-cut by an accept with a typed reason. */
export class TableCommissioning extends TableJob {
  static begun(plan: PairPlan = PLAN, meter: MeterProfile = COUNTS): TableCommissioning {
    const job = new TableCommissioning();
    const setup = { site: 'Quayside Hall 3', pair: plan.name, meter, adjusters: NEUTRAL_ADJUSTERS };
    job.input({ kind: 'open', setup: { ...setup, scope: 'commissioning', plan } });
    job.input({ kind: 'seated', seat: 'panel', device: '', takeover: false });
    job.input({ kind: 'seated', seat: 'emitter', device: '', takeover: false });
    return job;
  }

  /** With the list before the work answered. */
  static listed(plan?: PairPlan, meter?: MeterProfile): TableCommissioning {
    const job = TableCommissioning.begun(plan, meter);
    job.say('panel', 'yes');
    job.say('panel', 'told the control room');
    job.say('emitter', 'yes');
    job.say('emitter', 'yes');
    job.say('panel', 'yes');
    return job;
  }

  /** With an alignment accepted at `reading`. */
  static aligned(plan?: PairPlan, meter?: MeterProfile, reading = '140'): TableCommissioning {
    const job = TableCommissioning.listed(plan, meter);
    job.say('panel', reading);
    job.wait(6_000);
    job.say('panel', reading);
    job.input({ kind: 'override', seat: 'panel', reason: 'The alignment is not what this test is about' });
    return job;
  }

  seconds(s: number): this {
    this.wait(s * 1000);
    return this;
  }

  alarmTest({ reading = '70', after = 10 } = {}): void {
    if (this.action?.kind === 'watch-panel') this.say('panel', 'panel normal');
    this.readClear();
    this.say('emitter', 'half covered');
    this.seconds(3).say('panel', reading);
    this.seconds(after - 3).say('panel', 'panel shows alarm');
    if (this.action?.kind === 'confirm-item') this.say('panel', 'yes');
    this.say('emitter', 'clear');
    this.seconds(8).say('panel', 'panel normal');
    this.readClear();
  }

  faultTest({ reading = 'no signal', after = 20 } = {}): void {
    this.readClear();
    this.say('emitter', 'blocked');
    this.seconds(3).say('panel', reading);
    this.seconds(after - 3).say('panel', 'panel shows fault');
    this.say('emitter', 'clear');
    this.seconds(8).say('panel', 'panel normal');
    this.readClear();
  }

  /** What is asked before and after a cover, once it has settled. */
  readClear(reading = '140'): this {
    if (this.action?.kind === 'hold') this.seconds(5);
    if (this.action?.kind === 'read') this.say('panel', reading);
    return this;
  }

  /** The rest, from the proven tests to the point of signing. */
  finish(): void {
    this.sayYes();
    this.seconds(6).say('panel', '140');
    this.sayYes();
  }

  private sayYes(): void {
    while (this.action?.kind === 'confirm-item') this.say('panel', 'yes');
  }

  of<T extends Fact['type']>(type: T) {
    return ofType(this.facts, type);
  }

  sign(count = this.state.count) {
    return this.input({
      kind: 'sign',
      name: 'R. Example',
      role: 'Supervisor',
      signature: { kind: 'typed', text: 'R. Example' },
      head: { job: 'job-on-the-table', count, hash: '0'.repeat(64) },
      findings: [],
    });
  }
}

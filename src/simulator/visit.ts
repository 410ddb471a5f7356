import { missingForAccept } from '../engine/accept.ts';
import type { Action } from '../model/advice.ts';
import type { ChecklistItem, UsedCover } from '../model/checklists.ts';
import type { Entry } from '../model/entry.ts';
import { GUIDANCES } from '../model/guidance.ts';
import type { JobId, Seq } from '../model/ids.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { Person } from '../model/person.ts';
import type { JobSetup } from '../model/setup.ts';
import type { Axis } from '../model/turns.ts';
import { DECLARATION } from '../phrases/declaration.ts';
import { movedText } from '../phrases/facts.ts';
import { readingText } from '../phrases/readings.ts';
import { lossOf, thresholdDb } from '../plan/covers.ts';
import { VisitRecord } from '../record/visit-record.ts';
import { searchOf } from '../visit/search.ts';
import { countedOf } from '../visit/state.ts';
import { MOVE_MS, SAY_MS } from './crew.ts';
import { LEFT_PLANTS, leftWith, STEP_PLANTS, STEPS_OF_SITE, stepAnswers } from './hand-over.ts';
import { LoggedJob } from './logged-job.ts';
import {
  type BeamPair,
  block,
  createBeamPair,
  gainFor,
  type PairSpec,
  reAim,
  readMeter,
  setGain,
  turn,
} from './pair.ts';
import { photoOf } from './photos.ts';
import type { Plant } from './plants.ts';
import { createRng, type Rng } from './rng.ts';

/** A visit to a simulated pair. */
export interface VisitPlan {
  readonly job: JobId;
  readonly setup: JobSetup;
  readonly spec: PairSpec;
  /** When the crew begins, ms since 1970. */
  readonly from: number;
  readonly seed: number;
  /** What goes wrong. */
  readonly plants?: readonly Plant[];
  readonly signer?: { readonly name: string; readonly role: string };
}

/** More steps than any visit takes. */
const STEPS = 600;
const minute = 60_000;

/** Plays a whole visit with a crew that does what it is asked, except for the planted faults. */
export function playVisit(plan: VisitPlan): Entry[] {
  const visit = new Visit(plan);
  for (let step = 0; step < STEPS && !visit.over; step++) visit.step(step);
  if (!visit.over) throw new Error(`the visit to ${plan.setup.pair} did not end in ${STEPS} steps`);
  return visit.job.entries;
}

class Visit {
  readonly job: LoggedJob;
  over = false;
  private pair: BeamPair;
  private readonly rng: Rng;
  private readonly left: Set<Plant>;
  /** A test was made to fail. */
  private failed = false;
  /** Light that a cover blocks now, and that is lost with the path clear, dB. */
  private heldBack = 0;
  private lost = 0;
  private readings = 0;

  private readonly setup: JobSetup;

  constructor(private readonly plan: VisitPlan) {
    this.setup = setupFor(plan);
    this.pair = createBeamPair(plan.spec);
    this.rng = createRng(plan.seed);
    this.left = new Set(plan.plants);
    this.job = new LoggedJob(plan.job, plan.from);
    this.job.input({ kind: 'open', setup: this.setup });
    this.job.input({ kind: 'seated', seat: 'panel', device: 'Panel phone', takeover: false, ...AT_PANEL });
    this.job.wait(40_000);
    const { person, phone } = this.onLadder(plan.plants ?? []);
    this.job.input({
      kind: 'seated',
      seat: 'emitter',
      device: 'Ladder phone',
      takeover: false,
      phone,
      ...(person && { person }),
    });
  }

  step(count: number): void {
    if (count === 12) {
      if (this.take('takeover')) this.takeOver({ person: { name: 'C. Example' }, phone: '0000000c' });
      if (this.take('takeover-unnamed')) this.takeOver({ phone: '0000000c' });
      if (this.take('panel-climbs')) this.takeOver({ ...AT_PANEL, phone: '0000000c' });
      if (this.take('handed-on-unnamed')) this.job.input({ kind: 'person', seat: 'panel' });
    }
    if (count === 14 && this.take('long-gap')) this.job.wait(16 * minute);
    if (count === 14 && this.take('hour-of-roger')) this.sayRoger();
    const { instruction } = this.job.state;
    if (!instruction) this.job.say(this.job.state.held ? 'emitter' : 'panel', 'ready');
    else this.follow(instruction.advice.action);
  }

  private sayRoger(): void {
    for (let minutes = 0; minutes < 60; minutes += 5) {
      this.job.wait(5 * minute);
      this.job.say('emitter', 'roger');
    }
  }

  private onLadder(plants: readonly Plant[]): { person?: Person; phone: string } {
    if (plants.includes('unnamed')) return { phone: ON_LADDER.phone };
    if (plants.includes('alone')) return { ...ON_LADDER, person: AT_PANEL.person };
    if (plants.includes('same-person')) return { ...ON_LADDER, person: { name: 'a. EXAMPLE' } };
    return plants.includes('same-phone') ? { ...ON_LADDER, phone: AT_PANEL.phone } : ON_LADDER;
  }

  private takeOver(who: { person?: Person; phone: string }): void {
    this.job.input({ kind: 'link', seat: 'emitter', online: false });
    this.job.wait(minute);
    this.job.input({ kind: 'seated', seat: 'emitter', device: 'Spare phone', takeover: true, ...who });
  }

  /** True once: the fault is planted and its moment has come. */
  private take(plant: Plant): boolean {
    return this.left.delete(plant);
  }

  private follow(action: Action) {
    const { job } = this;
    switch (action.kind) {
      case 'hold':
        return job.wait(Math.max(SAY_MS, action.until - job.now));
      case 'read':
        return this.readWhenAsked();
      case 'ask':
        return this.read();
      case 'turn':
        return this.turn(action.axis, action.eighths);
      case 'gain': {
        job.wait(MOVE_MS);
        const { toward } = action;
        const gain = toward === undefined ? 0 : gainFor(this.pair, toward, job.now);
        this.pair = setGain(this.pair, gain, job.now);
        return job.say('emitter', gain <= 0 ? 'full gain' : 'done');
      }
      case 're-aim':
        job.wait(5 * MOVE_MS);
        this.pair = reAim(this.pair, { horizontal: 0, vertical: 0 }, job.now);
        return job.say('emitter', 'done');
      case 'block':
      case 'unblock':
        job.wait(MOVE_MS);
        this.pair = block(this.pair, action.kind === 'block', job.now);
        return job.say('emitter', action.kind === 'block' ? 'blocked' : 'clear');
      case 'check':
        return this.lookInto();
      case 'offer-accept':
        return this.take('left-unaccepted') ? this.leave() : this.accept();
      default:
        return this.commission(action);
    }
  }

  private commission(action: Action) {
    const { job } = this;
    switch (action.kind) {
      case 'confirm-item':
        if (action.list === 'after' && this.take('left-isolated')) return this.leave();
        if (this.answersOddly(action.item)) return;
        job.wait(3 * SAY_MS);
        return job.say('panel', action.item === 'people-told' ? 'told the control room' : 'yes');
      case 'cover':
        return this.cover(action);
      case 'uncover':
        return this.uncover();
      case 'watch-panel':
        return this.watch(action);
      case 'settle-issue':
        throw new Error('a simulated crew tests again until it passes');
      case 'offer-sign':
        return this.sign();
      default:
        return this.leave();
    }
  }

  /** True if it was answered by a planted fault. */
  private answersOddly(item: ChecklistItem): boolean {
    const { job } = this;
    if (item === 'people-told' && this.take('told-nobody')) {
      job.write({
        actor: 'panel',
        fact: { type: 'item', list: 'before', item, done: true, note: 'No one yet' },
      });
      job.input({ kind: 'tick' });
      return true;
    }
    if (item === 'covers-on' && this.take('covers-off')) job.say('panel', 'no');
    else if (item === 'panel-normal' && this.take('panel-in-fault')) job.say('panel', 'panel shows fault');
    else return false;
    this.leave();
    return true;
  }

  private get rule(): string | undefined {
    return this.job.state.instruction?.advice.rule;
  }

  private cover(asked: UsedCover): void {
    const { job } = this;
    job.wait(MOVE_MS);
    const lost = asked.how === 'full' ? 'beam-lost-in-fault-test' : 'beam-lost-in-test';
    if (this.take(lost)) this.lost = ALL_DB;
    const strong = { how: 'filter', filter: STRONG_FILTER } as const;
    const isWrong = asked.how === 'filter' && asked.filter !== STRONG_FILTER && this.take('wrong-filter');
    const leaks = asked.how === 'full' && this.take('light-behind-cover');
    this.heldBack = leaks ? LEAKING_DB : lossOf(isWrong ? strong : asked);
    job.say('emitter', coveredText(asked));
    job.wait(3 * SAY_MS);
    if (!this.left.has('unread-behind')) this.read();
  }

  private uncover(): void {
    this.job.wait(MOVE_MS);
    this.heldBack = 0;
    this.job.say('emitter', 'clear');
  }

  private readWhenAsked() {
    if (this.rule === 'read-behind' && this.take('unread-behind')) return this.uncover();
    if (this.rule === 'clear-after' && this.take('unread-after')) return this.cover({ how: 'full' });
    if (this.rule !== 'clear-before' || !this.take('unread-before')) return this.read();
    // Covered without being asked, and left on until the panel shows it.
    this.cover({ how: 'half' });
    this.job.wait(8_000);
    this.job.say('panel', 'panel shows alarm');
  }

  /** The panel does what is set, a second late. */
  private watch({ expect, until }: Extract<Action, { kind: 'watch-panel' }>): void {
    const isLost = expect === 'alarm' && this.lost === ALL_DB;
    if (expect === 'normal' && this.heldBack > 0) {
      this.keepQuiet(until ?? 0);
      return;
    }
    const { alarmDelay = 10, faultDelay = 10 } = this.plan.setup.plan ?? {};
    const set = expect === 'normal' ? 8 : expect === 'alarm' ? alarmDelay : faultDelay;
    const late = expect === 'alarm' && !this.failed && LATE.some((plant) => this.left.has(plant));
    if (late) this.failed = true;
    const tooLong = late ? 60 : 0;
    this.job.wait(1000 * Math.max(1, set - 2 + tooLong));
    this.job.say('panel', `panel shows ${isLost ? 'fault' : expect}`);
    if (expect === 'alarm' && this.take('both-shown')) {
      this.job.wait(2 * SAY_MS);
      this.job.say('panel', 'panel shows fault');
    }
  }

  /** Behind a filter that is too weak to bring an alarm nothing happens, unless the detector is too sensitive. */
  private keepQuiet(until: number): void {
    const planted = !this.failed && TOO_SENSITIVE.some((plant) => this.left.has(plant));
    if (planted) this.failed = true;
    const threshold = thresholdDb(this.setup.plan) ?? ALL_DB;
    const tooSensitive = planted || this.heldBack >= threshold;
    this.job.wait(tooSensitive ? 10_000 : Math.max(SAY_MS, until - this.job.now));
    if (tooSensitive) this.job.say('panel', 'panel shows alarm');
  }

  private read() {
    const { job } = this;
    job.wait(SAY_MS);
    const missing = Math.min(this.heldBack + this.lost, ALL_DB);
    const dimmed = { ...this.pair, gainDb: this.pair.gainDb + missing };
    const lit = missing === 0 ? this.pair : { ...dimmed, shown: { power: 0, at: 0 } };
    const text = readingText(readMeter(lit, job.now, this.rng), this.plan.setup.meter);
    this.readings += 1;
    if (this.readings > 3 && /\d/.test(text) && this.take('misread')) {
      job.say('panel', '77');
      job.wait(2 * SAY_MS);
      return job.say('panel', `wrong, ${text}`);
    }
    job.say('panel', text);
    this.overrideHere();
  }

  private lookInto() {
    const { job } = this;
    if (this.take('walked-off')) return this.leave();
    job.wait(2 * minute);
    this.lost = 0;
    const open = job.state.issues.find(({ closed }) => !closed);
    const how = 'Late by the verification delay of the panel, see its configuration';
    if (open && (this.take('excused') || this.take('too-sensitive-excused')))
      job.input({ kind: 'close-issue', by: 'panel', issue: open.seq, how });
    else job.say('panel', 'done');
  }

  /** A crew in a hurry takes a reading in the band after a turn for a proven peak. */
  private overrideHere(): void {
    const search = searchOf(this.job.state);
    const touched = countedOf(this.job.state).findLast(({ type }) => type === 'move' || type === 'gain');
    if (!search || touched?.type !== 'move') return;
    const missing = missingForAccept(search, this.job.now).map(({ id }) => id);
    const unbracketed = missing.some((id) => id.startsWith('bracket'));
    if (!unbracketed || missing.includes('in-band') || missing.includes('settled-reading')) return;
    if (!this.take('overridden')) return;
    this.job.input({ kind: 'override', seat: 'panel', reason: 'The lift has to go back at noon' });
  }

  private turn(axis: Axis, eighths: number): void {
    const { job } = this;
    job.wait(MOVE_MS);
    if (this.readings > 3 && this.take('stuck-screw')) {
      job.say('emitter', "it's stuck");
      return;
    }
    if (this.take('clock-back')) job.now -= 90_000;
    this.pair = turn(this.pair, axis, eighths, job.now);
    job.say('emitter', 'done');
    // A reading called too early, and a turn made on it without waiting: there and back.
    if (this.readings > 3 && this.left.has('hasty')) {
      this.read();
      if (job.state.reading?.reading.kind === 'value' && this.take('hasty')) {
        for (const back of [2, -2]) {
          this.pair = turn(this.pair, axis, back, job.now);
          job.say('emitter', movedText(axis, back));
        }
      }
    }
  }

  private accept(): void {
    const { job } = this;
    job.say('panel', 'accept');
    if (this.take('drift')) this.pair = { ...this.pair, gainDb: this.pair.gainDb + 0.3 };
    if (this.take('dip-before-test')) this.lost = 2;
    if (this.take('mount-slips')) this.pair = slipped(this.pair);
    if (this.plan.setup.scope !== 'commissioning') this.leave();
  }

  private sign(): void {
    const { job } = this;
    if (this.take('roger-at-the-end')) {
      this.sayRoger();
      this.leave();
      return;
    }
    const { name, role } = this.plan.signer ?? { name: 'S. Example', role: 'Supervisor' };
    job.wait(4 * minute);
    this.handOver();
    const first = this.job.state.count;
    if (this.take('photo-removed')) {
      job.input({ kind: 'photo', by: 'emitter', fact: photoOf('Blurred') });
      this.removePhoto('emitter', first);
      job.input({ kind: 'photo', by: 'emitter', fact: photoOf('Serial number') });
    }
    const removesLater = this.take('photo-removed-since');
    if (removesLater) job.input({ kind: 'photo', by: 'panel', fact: photoOf('Panel') });
    this.signAs(name, role);
    if (removesLater) this.removePhoto('supervisor', first);
    if (this.take('photo-since')) job.input({ kind: 'photo', by: 'panel', fact: photoOf('Panel') });
    if (this.take('touched-since-both')) {
      job.wait(minute);
      this.signAs('W. Example', 'Witness');
      job.wait(minute);
      job.say('emitter', movedText('vertical', 2));
    }
    if (this.take('touched-since')) {
      job.wait(minute);
      job.say('emitter', movedText('vertical', 2));
    }
    if (this.take('words-since')) {
      job.wait(minute);
      job.say('panel', 'roger');
    }
    if (this.take('read-since')) {
      job.wait(minute);
      this.read();
    }
    if (this.take('covered-since')) {
      job.wait(minute);
      job.say('emitter', 'blocked');
    }
    if (this.take('isolated-since')) {
      job.wait(minute);
      const fact = { type: 'item', list: 'before', item: 'outputs-isolated', done: true } as const;
      job.write({ actor: 'panel', fact });
    }
    if (this.take('gain-since')) {
      job.wait(minute);
      job.say('emitter', 'gain down');
    }
    this.leave();
  }

  private removePhoto(by: 'emitter' | 'supervisor', photo: Seq): void {
    this.job.wait(minute);
    this.job.input({
      kind: 'remove-photo',
      by,
      fact: { type: 'photo-removed', photo, why: 'A face is in it' },
    });
  }

  private handOver(): void {
    for (const plant of STEP_PLANTS) {
      if (!this.take(plant)) continue;
      for (const fact of stepAnswers(plant)) this.job.input({ kind: 'hand-over', by: 'supervisor', fact });
    }
    for (const plant of LEFT_PLANTS) {
      if (!this.take(plant)) continue;
      const fact = { type: 'as-left', values: leftWith(plant, this.setup.plan) } as const;
      this.job.input({ kind: 'hand-over', by: 'supervisor', fact });
    }
  }

  private signAs(name: string, role: string): void {
    const { job } = this;
    const findings = new VisitRecord(job).findings.map(({ id }) => id);
    const signature = { kind: 'typed', text: name } as const;
    const { head } = job;
    job.input({ kind: 'sign', name, role, signature, head, findings, declaration: DECLARATION });
  }

  private leave(): void {
    this.job.wait(5 * SAY_MS);
    for (const seat of ['emitter', 'panel'] as const) this.job.input({ kind: 'link', seat, online: false });
    this.over = true;
  }
}

const FIRM = 'Larkmoor Fire Systems';
/** Who is at the phones, and the marks of these. */
const AT_PANEL = {
  person: { name: 'A. Example', firm: FIRM, competence: 'Commissioning, card 1234' },
  phone: '0000000a',
};
const ON_LADDER = { person: { name: 'B. Example', firm: FIRM }, phone: '0000000b' };

/** All of them begin with an alarm behind a filter that is too weak to bring one. */
const TOO_SENSITIVE: readonly Plant[] = ['too-sensitive', 'too-sensitive-excused'];

/** What some plants need planned, or left out of the plan. */
function setupFor({ setup, plants = [] }: VisitPlan): JobSetup {
  const { plan } = setup;
  if (plants.includes('alone')) return { ...setup, alone: 'watching' };
  if (!plan) return setup;
  if ([...TOO_SENSITIVE, 'wrong-filter' as const].some((plant) => plants.includes(plant))) {
    const filters = [20, STRONG_FILTER];
    return { ...setup, plan: { ...plan, alarmThreshold: { unit: 'percent', value: 35 }, filters } };
  }
  if (plants.includes('filter-too-strong')) {
    const filters = [20, 95.5];
    return { ...setup, plan: { ...plan, alarmThreshold: { unit: 'percent', value: 60 }, filters } };
  }
  const outside = OUTSIDE.find(([plant]) => plants.includes(plant));
  if (outside) return { ...setup, ...(guidance && { guidance }), plan: { ...plan, ...outside[1] } };
  if (STEP_PLANTS.some((plant) => plants.includes(plant))) return { ...setup, steps: [...STEPS_OF_SITE] };
  if (plants.includes('left-height')) return { ...setup, plan: { ...plan, receiverHeight: 6 } };
  if (!plants.includes('threshold-unknown')) return setup;
  const { alarmThreshold: _, ...rest } = plan;
  return { ...setup, plan: rest };
}

/** Figures of a plan, each outside one limit. */
const OUTSIDE: readonly (readonly [Plant, Partial<PairPlan>])[] = [
  ['path-too-long', { rangeMax: 60 }],
  ['too-far-apart', { spacing: 16 }],
  ['near-a-wall', { wallDistance: 0.4 }],
  ['high-ceiling', { ceilingHeight: 60 }],
  ['deep-below-ceiling', { ceilingHeight: 16.4, emitterHeight: 9.4 }],
  ['high-threshold', { alarmThreshold: { unit: 'dB', value: 6.5 }, filters: [60, 85] }],
];
const [guidance] = GUIDANCES;

/** All of them begin with an alarm that does not come in time. */
const LATE: readonly Plant[] = ['late-alarm', 'excused', 'walked-off'];

/** As good as no light at all, and what passes a full cover that leaks, dB. */
const ALL_DB = 200;
const LEAKING_DB = 10;

/** Percent. */
const STRONG_FILTER = 60;

/** The mount gives way by most of the beam's half width; the screws stay where they are. */
function slipped(pair: BeamPair): BeamPair {
  const by = 5;
  const { aim, pointing } = pair;
  return {
    ...pair,
    aim: { ...aim, vertical: aim.vertical + by },
    pointing: { ...pointing, vertical: pointing.vertical + by },
  };
}

function coveredText({ how, filter }: UsedCover): string {
  if (how === 'half') return 'half covered';
  if (how === 'full') return 'blocked';
  return filter === undefined ? 'filter on' : `${filter} percent filter on`;
}

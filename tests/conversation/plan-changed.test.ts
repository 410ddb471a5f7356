import { describe, expect, it } from 'vitest';
import { respond } from '../../src/conversation/respond.ts';
import type { FactOf } from '../../src/model/facts.ts';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { NEUTRAL_METERS } from '../../src/model/profile.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { describe as describeEntry } from '../../src/phrases/describe.ts';
import { planNowText } from '../../src/phrases/plan-changes.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { LoggedJob } from '../../src/simulator/logged-job.ts';
import { EMPTY } from '../../src/visit/state.ts';
import { playedVisit, SETUP } from '../findings/site.ts';
import { COUNTS } from './table.ts';

const PLAN = SETUP.plan as PairPlan;

/** An open visit with both in their seats. */
function openVisit(setup: JobSetup = SETUP): LoggedJob {
  const job = new LoggedJob('visit-100', 1_000);
  job.input({ kind: 'open', setup });
  job.input({ kind: 'seated', seat: 'panel', device: 'Panel phone', takeover: false });
  job.input({ kind: 'seated', seat: 'emitter', device: 'Ladder phone', takeover: false });
  return job;
}

/** What the log gained when the desk saved these plans one after the other. */
function told(job: LoggedJob, ...plans: Partial<PairPlan>[]): string[] {
  const from = job.entries.length;
  for (const plan of plans) job.input({ kind: 'plan-changed', plan: { ...PLAN, ...plan } });
  return job.entries
    .slice(from)
    .flatMap(({ fact }) => (fact.type === 'notice' ? [`${fact.code}: ${fact.text}`] : []));
}
const changesIn = ({ entries }: LoggedJob): FactOf<'plan-changed'>[] =>
  entries.flatMap(({ fact }) => (fact.type === 'plan-changed' ? [fact] : []));

const DELAY = { alarmDelay: 30 };

describe('a plan that is changed during an open visit', () => {
  it('is told to both phones, old and new, and is an entry of the log', () => {
    const job = openVisit();
    expect(told(job, DELAY)).toEqual([
      'plan-changed: The desk has changed the plan of this pair: alarm delay from 10 s to 30 s. This visit goes by the old plan. Ask the desk before you go on: the new plan needs a new visit.',
    ]);
    const [change] = changesIn(job);
    expect(change).toMatchObject({ before: { alarmDelay: 10 }, after: DELAY });
    const entry = job.entries.find(({ fact }) => fact.type === 'plan-changed');
    expect(entry?.actor).toBe('supervisor');
    expect(entry && describeEntry(entry, COUNTS)?.text).toBe(
      'The desk changed the plan: alarm delay: 10 s → 30 s',
    );
  });

  it('stands on the screens as long as it is so, against the plan of the visit', () => {
    const job = openVisit();
    expect(planNowText(job.state)).toBeUndefined();
    told(job, DELAY, { ...DELAY, zone: '9' });
    expect(planNowText(job.state)).toBe(
      'Plan changed since this visit began: zone: 7 → 9; alarm delay: 10 s → 30 s',
    );
    told(job, {});
    expect(planNowText(job.state)).toBeUndefined();
  });

  it('is told against what the crew knew, also when it is as it was again', () => {
    const [, second, back] = told(openVisit(), DELAY, { alarmDelay: 40 }, {});
    expect(second).toContain('alarm delay from 30 s to 40 s');
    expect(back).toBe(
      'plan-changed: The desk has changed the plan of this pair back to what it was when this visit began: alarm delay from 40 s to 10 s. Go on.',
    );
  });

  it.each<[string, Partial<PairPlan>]>([
    ['the same plan, saved again', {}],
    ['another name alone', { name: 'Renamed' }],
    ['the meter that stood in for it', { meter: COUNTS }],
    ['the same meter, with the decibels of its gain step', { meter: { ...COUNTS, gainDbPerStep: 1 } }],
  ])('says nothing of %s', (_, plan) => {
    const job = openVisit();
    expect(told(job, plan)).toEqual([]);
    expect(changesIn(job)).toEqual([]);
  });

  it('tells of a meter that was planned in place of the one in use, and of its removal', () => {
    const [other] = NEUTRAL_METERS.filter(({ name }) => name !== COUNTS.name);
    const [to, back] = told(openVisit(), other ? { meter: other } : {}, {});
    expect(to).toContain(`meter from ${COUNTS.name} to ${other?.name}`);
    expect(back).toContain('back to what it was');
  });

  it('changes nothing in a visit that is signed: there it is a finding of the site', () => {
    const job = openVisit();
    const signed = new LoggedJob('visit-1000', 1_000);
    for (const { actor, fact, at } of playedVisit()) {
      signed.now = at;
      signed.write({ actor, fact });
    }
    expect(signed.state.signed).toBeDefined();
    const count = signed.entries.length;
    signed.input({ kind: 'plan-changed', plan: { ...PLAN, ...DELAY } });
    expect(changesIn(signed)).toEqual([]);
    expect(signed.state.count).toBe(count);
    expect(new VisitRecord(job).status).not.toBe('signed');
  });

  it('is told again where more than words came after the signature: the visit is not over', () => {
    const job = new LoggedJob('visit-1000', 1_000);
    for (const { actor, fact, at } of playedVisit(['read-since'])) {
      job.now = at;
      job.write({ actor, fact });
    }
    expect(job.state.changedBy).toBeDefined();
    expect(told(job, DELAY)).toEqual([expect.stringContaining('from 10 s to 30 s')]);
  });

  it('says nothing before a job is opened, or where it has no plan', () => {
    const plan = { ...PLAN, ...DELAY };
    expect(respond(EMPTY, { kind: 'plan-changed', plan }, 1_000)).toMatchObject({
      kind: 'facts',
      drafts: [],
    });
    const { plan: _, ...alone } = SETUP;
    expect(told(openVisit(alone), DELAY)).toEqual([]);
  });

  it('does not bring advice back that had ended in silence', () => {
    const job = openVisit();
    job.wait(60 * 60_000);
    expect(job.state.instruction).toBeUndefined();
    told(job, DELAY);
    expect(job.state.instruction).toBeUndefined();
  });
});

import { describe, expect, it } from 'vitest';
import { stepFailed, stepNotDone } from '../../src/findings/steps.ts';
import type { Fact } from '../../src/model/facts.ts';
import { valueReading } from '../../src/model/reading.ts';
import { MAX_SITE_STEPS, SiteSteps, type StepResult } from '../../src/model/steps.ts';
import { STEPS_OF_EVERY_VISIT } from '../../src/phrases/steps.ts';
import { setupOf } from '../../src/site/respond.ts';
import { EMPTY_SITE, foldSite } from '../../src/site/state.ts';
import { readVisit, type Visit } from '../../src/visit/visit.ts';
import { COUNTS } from '../conversation/table.ts';
import { atSecond, jobAfter, SETUP, type Step } from './record.ts';

const HORN = { cause: 'Call point pressed', effect: 'The horns sound' };
const DOOR = { cause: 'Alarm from the beam', effect: 'The doors close' };

/** A visit with both steps: entry 1 accepts, each fact after it ten seconds later. */
function visitWith(facts: readonly Fact[], isAccepted = true): Visit {
  const accept: Fact = { type: 'accept', reading: valueReading(140) };
  const steps = [...(isAccepted ? [accept] : []), ...facts].map((fact, i): Step => ['', (i + 1) * 10, fact]);
  const end = jobAfter(steps, { ...SETUP, steps: [HORN, DOOR] });
  const last = { seq: steps.length, at: atSecond(9_999) };
  return readVisit([last] as unknown as Visit['entries'], end) ?? expect.fail('no visit');
}
const horn = (result: StepResult): Fact => ({ type: 'step', cause: HORN.cause, result });
const door = (result: StepResult): Fact => ({ type: 'step', cause: DOOR.cause, result });

describe('a step of cause and effect', () => {
  it.each<[string, Fact[], string[], string[]]>([
    ['not answered is not done', [], [], [HORN.cause, DOOR.cause]],
    ['passed is settled', [horn('passed'), door('passed')], [], []],
    ['failed is a failure alone', [horn('failed'), door('passed')], [HORN.cause], []],
    ['left out is not done', [horn('not-done'), door('passed')], [], [HORN.cause]],
    ['failed and then passed is settled', [horn('failed'), door('passed'), horn('passed')], [], []],
    [
      'passed and then failed is a failure',
      [horn('passed'), door('passed'), horn('failed')],
      [HORN.cause],
      [],
    ],
  ])('%s', (_, facts, failed, open) => {
    const visit = visitWith(facts);
    expect(stepFailed(visit).flatMap(({ about }) => about)).toEqual(failed);
    expect(stepNotDone(visit).flatMap(({ about }) => about)).toEqual(open);
  });

  it('rests on its answer; a failure is serious', () => {
    const visit = visitWith([horn('not-done'), door('failed')]);
    expect(stepFailed(visit)).toMatchObject([{ severity: 'serious', entries: [3] }]);
    expect(stepNotDone(visit)).toMatchObject([{ severity: 'question', entries: [1, 2] }]);
  });

  it('is not asked about before the acceptance', () => {
    expect(stepNotDone(visitWith([], false))).toEqual([]);
  });
});

describe('the steps of a site', () => {
  const list = (count: number) =>
    Array.from({ length: count }, (_, i) => ({ cause: `Cause ${i}`, effect: 'An effect' }));

  it.each([
    ['as many as there may be', list(MAX_SITE_STEPS), true],
    ['one more', list(MAX_SITE_STEPS + 1), false],
    ['two with one cause', [HORN, { ...HORN, cause: 'CALL point pressed' }], false],
    ['none', [], true],
  ])('%s', (_, steps, is) => {
    expect(SiteSteps.safeParse(steps).success).toBe(is);
  });

  it('come after those of every visit, and replace one of the same cause', () => {
    const [mains] = STEPS_OF_EVERY_VISIT;
    const own = { cause: mains?.cause ?? '', effect: 'As on the drawing of the site' };
    const facts: Fact[] = [
      { type: 'site-opened', site: 'Hall', logVersion: 2 },
      { type: 'pair-planned', pair: { id: 'N1', name: 'North', meter: COUNTS } },
      { type: 'steps-defined', steps: [HORN] },
      { type: 'steps-defined', steps: [own, DOOR] },
    ];
    const site = facts.reduce((state, fact, seq) => foldSite(state, { seq, at: 0, fact }), EMPTY_SITE);
    const setup = setupOf(site, 'N1', {});
    expect('steps' in setup ? setup.steps : undefined).toEqual([...STEPS_OF_EVERY_VISIT.slice(1), own, DOOR]);
  });
});

import { describe, expect, it } from 'vitest';
import { toJsonLines } from '../../src/log/json-lines.ts';
import type { Fact, FactOf } from '../../src/model/facts.ts';
import { SensorState } from '../../src/model/sensor.ts';
import { SENSED_WORDS } from '../../src/phrases/buttons.ts';
import { describe as lineOf } from '../../src/phrases/describe.ts';
import { SENSOR_TELLS, sensorNotice } from '../../src/phrases/indicator.ts';
import { OpenJob } from '../../src/protocol/jobs.ts';
import { ClientMessage } from '../../src/protocol/socket.ts';
import { shortfallDb } from '../../src/simulator/pair.ts';
import { understand } from '../../src/understand/understand.ts';
import { searchOf } from '../../src/visit/search.ts';
import { countedOf } from '../../src/visit/state.ts';
import { verified } from '../verify/checked.ts';
import { SENSING, SensingJob, TAUGHT } from './sensing-job.ts';

const isAccepted = ({ state }: SensingJob): boolean => state.accepted !== undefined;
const isLooking = ({ action }: SensingJob): boolean => action?.kind === 'read';
const facts = <T extends Fact['type']>(job: SensingJob, type: T): FactOf<T>[] =>
  job.entries.map(({ fact }) => fact).filter((fact): fact is FactOf<T> => fact.type === type);
const lastQuery = (job: SensingJob): string | undefined => facts(job, 'query').at(-1)?.text;
const looks = ({ state }: SensingJob) => countedOf(state).filter(({ type }) => type === 'trend');
/** A job that asks for its second look, after a turn: the first was told at place 0.5. */
function afterOneTurn(): SensingJob {
  const job = new SensingJob();
  job.goOn((each) => isLooking(each as SensingJob) && looks(each as SensingJob).length > 0);
  return job;
}

describe('one person alone whose second phone listens to a tone', () => {
  const job = new SensingJob();
  job.goOn((each) => isAccepted(each as SensingJob));

  it('is led to an acceptance with all its evidence, near the peak', () => {
    expect(searchOf(job.state)?.accepted).toMatchObject({ backed: true, missing: [] });
    expect(shortfallDb(job.pair)).toBeLessThan(0.5);
    expect(facts(job, 'reading').some(({ reading }) => reading.kind === 'value')).toBe(false);
  });

  it('has a record that names the tone, the profile and the way, is whole, and asks that somebody read the signal', () => {
    const result = verified(toJsonLines(job.entries, job.head));
    expect(result).toMatchObject({ ok: true, replayed: true });
    const found = result.ok ? result.findings.map(({ id, severity }) => [id, severity]) : [];
    expect(found).toContainEqual(['alone', 'question']);
    expect(facts(job, 'sensor')).toEqual([
      { type: 'sensor', seat: 'panel', sort: 'tone', state: 'sensing', taught: TAUGHT },
    ]);
    const said = facts(job, 'said').filter(({ sensor }) => sensor);
    expect(said.length).toBeGreaterThan(10);
    expect(said[0] && lineOf({ actor: 'panel', fact: said[0] }, undefined)?.text).toMatch(
      /^steady [(]by a tone, taught profile, 30 moments[)]$/,
    );
  });
});

describe('R164: where a phone tells what the light does, only what it tells counts', () => {
  it.each(['rising', 'steady', 'no signal', 'saturated', 'wandering', '140', 'about 140', 'not 140, 150'])(
    'not "%s" from the person, who is told so',
    (words) => {
      const job = new SensingJob();
      job.goOn((each) => isLooking(each as SensingJob));
      const before = countedOf(job.state).length;
      job.say('emitter', words);
      expect(countedOf(job.state)).toHaveLength(before);
      expect(lastQuery(job)).toBe(SENSOR_TELLS);
      // The phone goes on.
      job.tell('steady', { place: 0.5 });
      expect(looks(job)).toHaveLength(1);
    },
  );
});

describe('R165: a word of such a phone counts', () => {
  it.each<[string, (job: SensingJob) => void, boolean]>([
    ['held against the last one', (job) => job.tell('rising', { against: job.base?.against ?? 0 }), true],
    ['held against none', (job) => job.tell('steady'), true],
    [
      'held against another entry',
      (job) => job.tell('rising', { against: (job.base?.against ?? 0) - 1 }),
      false,
    ],
    [
      'held against one that was told before it was taught anew',
      (job) => {
        const { base } = job;
        job.teach(TAUGHT);
        job.tell('rising', { against: base?.against ?? 0 });
      },
      false,
    ],
    [
      'held against one that was taken back',
      (job) => {
        const { base } = job;
        job.say('emitter', 'undo');
        job.say('emitter', 'undo');
        job.tell('rising', { against: base?.against ?? 0 });
      },
      false,
    ],
  ])('%s', (_, tell, counts) => {
    const job = afterOneTurn();
    const queries = facts(job, 'query').length;
    const before = looks(job).at(-1)?.seq;
    tell(job);
    expect((looks(job).at(-1)?.seq ?? 0) > (before ?? 0)).toBe(counts);
    // Nobody is asked: the phone tells again.
    expect(facts(job, 'query')).toHaveLength(queries);
  });

  it('only where it was taught', () => {
    const job = new SensingJob('nothing');
    job.goOn((each) => isLooking(each as SensingJob));
    job.tell('steady');
    expect(looks(job)).toEqual([]);
    job.teach(TAUGHT);
    job.tell('steady');
    expect(looks(job)).toHaveLength(1);
  });

  it.each([
    [-1, false],
    [0, true],
  ])('from the settle time after the hands were off on: %d ms after it, %s', (late, counts) => {
    const job = afterOneTurn();
    const { search, meter } = { search: searchOf(job.state), meter: SENSING.meter };
    const before = looks(job).length;
    job.now = (search?.stay.since ?? 0) + meter.settleMs + late;
    job.tell('steady');
    expect(looks(job).length > before).toBe(counts);
  });

  it('only in a job of this way', () => {
    const job = new SensingJob();
    job.goOn((each) => isLooking(each as SensingJob));
    (job.state.setup as { alone: string }).alone = 'looking';
    job.tell('steady');
    expect(looks(job)).toEqual([]);
    (job.state.setup as { alone: string }).alone = 'sensing';
  });
});

describe('R166: a word that was held against none says only that there is light', () => {
  it('is marked so, shown so, and never held against the look before it', () => {
    const job = afterOneTurn();
    job.tell('steady');
    expect(looks(job).at(-1)).toMatchObject({ trend: 'steady', first: true });
    const line = facts(job, 'readback').at(-1)?.text;
    expect(line).toContain('light seen');
    const all = searchOf(job.state)?.looks ?? [];
    expect(all.at(-1)?.first).toBe(true);
  });
});

describe('R167: words of a phone that follows an indicator', () => {
  const say = { t: 'say', id: 'Zt7eC6GDJv7wbWtYkP4iy', via: 'button', text: 'rising', re: 12 };
  const sensor = { sort: 'tone', moments: 30, place: 0.4, against: 9 };
  it.each<[string, object, boolean]>([
    ['as they are', {}, true],
    ['without a place and a base', { sensor: { sort: 'lamp', moments: 1 } }, true],
    ['another word', { text: 'accept' }, false],
    ['a number', { text: '47' }, false],
    ['typed', { via: 'typed' }, false],
    ['heard', { via: 'voice', confidence: 1 }, false],
    ['without the order', { re: undefined }, false],
    ['with a camera beside it', { camera: { frames: 5, belief: 1 } }, false],
    ['of no moment', { sensor: { ...sensor, moments: 0 } }, false],
    ['of an unknown sort', { sensor: { ...sensor, sort: 'smell' } }, false],
  ])('%s: %j is %s', (_, more, ok) => {
    expect(ClientMessage.safeParse({ ...say, sensor, ...more }).success).toBe(ok);
  });

  it.each(Object.entries(SENSED_WORDS))('for %s are understood: %s', (_, words) => {
    const understood = understand(words, undefined, { meter: SENSING.meter });
    expect(understood).toMatchObject({ kind: 'understood' });
    expect(understood.kind === 'understood' && understood.intents).toHaveLength(1);
  });
});

describe('R168: such a phone tells what it was taught, and how it is', () => {
  const message = { t: 'sensor', id: 'Qs7eC6GDJv7wbWtYkP4iy', sort: 'lamp' };
  it.each([
    [{ state: 'sensing', taught: TAUGHT }, true],
    [{ state: 'sensing' }, true],
    [{ state: 'dark', taught: TAUGHT }, false],
    [{ state: 'sensing', taught: { ...TAUGHT, sd: 0 } }, false],
    [{ state: 'asleep' }, false],
  ])('%j over the wire is %s', (more, ok) => {
    expect(ClientMessage.safeParse({ ...message, ...more }).success).toBe(ok);
  });

  it.each(SensorState.options)('says on both phones that it is %s, and stays in the log', (state) => {
    for (const sort of ['tone', 'lamp'] as const) {
      const job = new SensingJob();
      job.input({ kind: 'sensor', seat: 'panel', sort, state });
      expect(facts(job, 'sensor').at(-1)).toEqual({ type: 'sensor', seat: 'panel', sort, state });
      expect(facts(job, 'notice').at(-1)).toMatchObject({
        code: 'sensor',
        text: sensorNotice({ sort, state }),
      });
    }
  });

  it('does not speak for the person: advice that ran out in silence stays silent', () => {
    const job = new SensingJob();
    job.wait(10 * 60_000);
    expect(job.state.instruction).toBeUndefined();
    job.input({ kind: 'sensor', seat: 'panel', sort: 'tone', state: 'sensing' });
    expect(job.state.instruction).toBeUndefined();
  });
});

describe('R169: a question that only the person can answer', () => {
  it('is not answered by a phone, and waits', () => {
    const job = afterOneTurn();
    job.say('emitter', 'turned the horizontal a quarter');
    const { query } = job.state;
    if (!query?.turn) throw new Error(`no question about a turn: ${JSON.stringify(query)}`);
    const before = looks(job).length;
    job.tell('rising', { against: job.base?.against ?? 0 });
    expect(looks(job)).toHaveLength(before);
    expect(job.state.query).toEqual(query);
  });
});

describe('a job in which a phone follows an indicator', () => {
  it.each([
    [{}, true],
    [{ scope: 'periodic' }, false],
    [{ scope: 'commissioning' }, false],
    [{ meter: { ...SENSING.meter, gain: 'automatic' } }, false],
  ])('is opened with %j: %s', (change, ok) => {
    expect(OpenJob.safeParse({ setup: { ...SENSING, ...change }, device: '' }).success).toBe(ok);
  });
});

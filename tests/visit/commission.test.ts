import { describe, expect, it } from 'vitest';
import { commissionOf } from '../../src/visit/search.ts';
import { missingForSignoff } from '../../src/visit/signoff.ts';
import { PLAN, TableCommissioning } from './bench.ts';

const missing = (job: TableCommissioning) => {
  const commission = commissionOf(job.state);
  if (!commission) throw new Error('not opened');
  return missingForSignoff(commission, job.now);
};

describe('before the work', () => {
  it('the list is asked item by item, and nothing is turned before it is answered', () => {
    const job = TableCommissioning.begun();
    const asked: unknown[] = [];
    for (const answer of ['yes', 'told security', 'yes', 'yes', 'yes']) {
      const { action } = job;
      asked.push(action?.kind === 'confirm-item' && action.item);
      job.say('panel', answer);
    }
    expect(asked).toEqual([
      'outputs-isolated',
      'people-told',
      'access-inspected',
      'laser-caution',
      'path-clear',
    ]);
    expect(job.action?.kind).not.toBe('confirm-item');
  });

  it('"no" is written down, and the item is asked again', () => {
    const job = TableCommissioning.begun();
    job.say('panel', 'no');
    expect(job.of('item')).toMatchObject([{ item: 'outputs-isolated', done: false }]);
    expect(job.action).toMatchObject({ kind: 'confirm-item', item: 'outputs-isolated' });
  });

  it('"yes" does not answer who was told; a name does, and is kept', () => {
    const job = TableCommissioning.begun();
    job.say('panel', 'yes');
    job.say('panel', 'yes');
    expect(job.state.query?.text).toContain('Who was told?');
    job.say('panel', 'told Asha at the gate');
    expect(job.of('item').at(-1)).toMatchObject({ item: 'people-told', note: 'Asha at the gate' });
    expect(job.action).toMatchObject({ item: 'access-inspected' });
  });

  it.each(['told nobody', 'told no one yet'])(
    '"%s" is no answer to who was told: it is asked again',
    (words) => {
      const job = TableCommissioning.begun();
      job.say('panel', 'yes');
      job.say('panel', words);
      expect(job.of('item').some(({ item }) => item === 'people-told')).toBe(false);
      expect(job.state.query?.text).toContain('Who was told?');
      job.say('panel', 'told Asha at the gate');
      expect(job.action).toMatchObject({ item: 'access-inspected' });
    },
  );

  it.each(['roger', 'okay', 'copy that'])('"%s" only says that it was heard: it answers nothing', (word) => {
    const job = TableCommissioning.begun();
    job.say('panel', word);
    expect(job.of('item')).toEqual([]);
    expect(job.state.query?.text).toContain('Is that right?');
    job.say('panel', 'yes');
    expect(job.of('item')).toMatchObject([{ item: 'outputs-isolated', done: true }]);
  });

  it('"yes, told the control room" answers the isolation and who was told in one breath', () => {
    const job = TableCommissioning.begun();
    job.say('panel', 'yes, told the control room');
    expect(job.action).toMatchObject({ item: 'access-inspected' });
  });

  it('an answer taken back is asked again', () => {
    const job = TableCommissioning.begun();
    job.say('panel', 'yes');
    job.say('panel', 'undo');
    expect(job.action).toMatchObject({ item: 'outputs-isolated' });
  });
});

describe('proving', () => {
  it('is led step by step from a normal panel to the signature', () => {
    const job = TableCommissioning.aligned();
    expect(job.action).toMatchObject({ kind: 'watch-panel', expect: 'normal' });
    job.say('panel', 'panel normal');
    expect(job.action).toEqual({ kind: 'read' });
    job.say('panel', '140');
    expect(job.action).toEqual({ kind: 'cover', how: 'half' });
    job.say('emitter', 'half covered');
    expect(job.action).toMatchObject({ kind: 'watch-panel', expect: 'alarm' });
    job.say('panel', '70');
    job.seconds(11).say('panel', 'panel shows alarm');
    expect(job.action).toMatchObject({ kind: 'confirm-item', item: 'panel-indication' });
    job.say('panel', 'yes');
    expect(job.action).toEqual({ kind: 'uncover' });
    job.say('emitter', 'clear');
    expect(job.action).toMatchObject({ kind: 'watch-panel', expect: 'normal' });
    job.seconds(9).say('panel', 'panel normal');
    expect(job.action).toEqual({ kind: 'read' });
    job.say('panel', '140');
    expect(job.action).toEqual({ kind: 'cover', how: 'full' });
    job.faultTest();
    expect(job.action).toMatchObject({ kind: 'confirm-item', item: 'wiring' });
    job.say('panel', 'yes');
    expect(job.action).toEqual({ kind: 'read' });
    job.seconds(5).say('panel', '140');
    for (const item of ['outputs-restored', 'covers-on', 'panel-normal']) {
      expect(job.action).toMatchObject({ kind: 'confirm-item', item });
      job.say('panel', 'yes');
    }
    expect(job.action).toEqual({ kind: 'offer-sign' });
    expect(missing(job)).toEqual([]);
    expect(job.of('issue-opened')).toEqual([]);
  });

  it('an alarm within five seconds of its set delay passes', () => {
    const job = TableCommissioning.aligned();
    job.alarmTest({ after: 14.9 });
    expect(job.of('issue-opened')).toEqual([]);
  });

  it.each([
    { what: 'too soon', after: 4.5, says: 'too early (after 4.5 s, set 10.0 s, plus or minus 5.0 s' },
    { what: 'too late', after: 15.5, says: 'did not show it in time' },
  ])('an alarm $what fails, with the reason, and opens an issue', ({ after, says }) => {
    const job = TableCommissioning.aligned();
    job.alarmTest({ after });
    expect(job.of('issue-opened')).toHaveLength(1);
    expect(job.of('issue-opened')[0]?.text).toContain(says);
  });

  it('no alarm at all fails by itself when its time is over', () => {
    const job = TableCommissioning.aligned();
    job.say('panel', 'panel normal');
    job.readClear().say('emitter', 'half covered');
    job.say('panel', '70');
    job.seconds(16);
    expect(job.of('issue-opened')).toHaveLength(1);
    expect(job.action).toEqual({ kind: 'uncover' });
  });

  it('a fault where an alarm was due fails', () => {
    const job = TableCommissioning.aligned();
    job.say('panel', 'panel normal');
    job.readClear().say('emitter', 'half covered');
    job.seconds(10).say('panel', 'panel shows fault');
    expect(job.of('issue-opened')[0]?.text).toContain('something else');
  });

  it.each(['while it is covered', 'after it is uncovered'])(
    'alarm and fault in one test fail, %s',
    (when) => {
      const job = TableCommissioning.aligned();
      job.say('panel', 'panel normal');
      job.readClear().say('emitter', 'half covered');
      job.say('panel', '70');
      job.seconds(10).say('panel', 'panel shows alarm');
      if (when === 'after it is uncovered') job.say('emitter', 'clear');
      job.seconds(2).say('panel', 'panel shows fault');
      expect(job.of('issue-opened')[0]?.text).toContain('both alarm and fault');
    },
  );

  it('a reading behind half a cover that is not 3 dB lower fails', () => {
    const job = TableCommissioning.aligned();
    job.alarmTest({ reading: '125' });
    // By hand: 1 - 10^(-0.49 / 10) = 10.7 %; half a cover takes half.
    expect(job.of('issue-opened')[0]?.text).toContain('10.7 % lost, 50.0 % expected');
  });

  it('light that stays behind a full cover fails the fault test', () => {
    const job = TableCommissioning.aligned();
    job.alarmTest();
    job.faultTest({ reading: '40' });
    expect(job.of('issue-opened')[0]?.text).toContain('Fault test failed');
  });

  it('a panel that does not come back to normal fails the test', () => {
    const job = TableCommissioning.aligned();
    job.say('panel', 'panel normal');
    job.readClear().say('emitter', 'half covered');
    job.say('panel', '70');
    job.seconds(10).say('panel', 'panel shows alarm');
    job.say('panel', 'yes');
    job.say('emitter', 'clear');
    job.seconds(121);
    expect(job.of('issue-opened')[0]?.text).toContain('did not come back to normal');
  });

  it('a failed test is looked into, made again, and its issue closes when it passes', () => {
    const job = TableCommissioning.aligned();
    job.alarmTest({ after: 3 });
    expect(job.action).toMatchObject({ kind: 'check' });
    job.say('panel', 'done');
    job.readClear();
    expect(job.action).toEqual({ kind: 'cover', how: 'half' });
    job.alarmTest();
    expect(job.state.issues).toMatchObject([{ closed: { how: 'Tested again, and passed.' } }]);
    job.faultTest();
    job.finish();
    expect(missing(job)).toEqual([]);
  });

  it('a failed test that is answered for in writing is gone on from, and stays in the record', () => {
    const job = TableCommissioning.aligned();
    job.alarmTest({ after: 3 });
    const issue = job.state.issues[0]?.seq as number;
    job.input({
      kind: 'close-issue',
      by: 'panel',
      issue,
      how: 'Delay not fitted to this panel, see drawing',
    });
    expect(job.action).toEqual({ kind: 'cover', how: 'full' });
    job.faultTest();
    job.finish();
    expect(missing(job)).toEqual([]);
  });

  it('a test uncovered too soon says nothing and is made again without an issue', () => {
    const job = TableCommissioning.aligned();
    job.say('panel', 'panel normal');
    job.readClear().say('emitter', 'half covered');
    job.seconds(2).say('emitter', 'clear');
    expect(job.of('issue-opened')).toEqual([]);
    job.readClear();
    expect(job.action).toEqual({ kind: 'cover', how: 'half' });
  });

  it('a half cover turned into a full one at once is no alarm test', () => {
    const job = TableCommissioning.aligned();
    job.say('panel', 'panel normal');
    job.readClear().say('emitter', 'half covered');
    job.seconds(2).say('emitter', 'blocked');
    job.seconds(20).say('panel', 'panel shows fault');
    job.say('emitter', 'clear');
    job.seconds(5).say('panel', 'panel normal');
    job.readClear();
    expect(job.of('issue-opened')).toEqual([]);
    expect(job.action).toEqual({ kind: 'cover', how: 'half' });
  });

  it('the causes of a failure are gone through once', () => {
    const job = TableCommissioning.aligned();
    job.say('panel', 'panel normal');
    job.readClear().say('emitter', 'half covered');
    job.say('panel', '70');
    job.seconds(40).say('panel', 'panel shows alarm');
    job.say('emitter', 'clear');
    job.readClear();
    expect(job.action).toMatchObject({ kind: 'check' });
    job.say('panel', 'done');
    job.say('panel', 'panel normal');
    job.readClear();
    expect(job.action).toEqual({ kind: 'cover', how: 'half' });
  });

  it('asks whether "covered" was half or all, and takes neither for granted', () => {
    const job = TableCommissioning.aligned();
    job.say('panel', 'panel normal');
    job.readClear().say('emitter', 'covered');
    expect(job.state.query?.text).toContain('Half of it, or all?');
    expect(job.action).toEqual({ kind: 'cover', how: 'half' });
    job.say('emitter', 'half covered');
    expect(job.action).toMatchObject({ kind: 'watch-panel', expect: 'alarm' });
  });

  it('a test filter is used where there is one, and the reading held against its grade', () => {
    const job = TableCommissioning.aligned({ ...PLAN, filterPercent: 50 });
    job.say('panel', 'panel normal');
    job.readClear();
    expect(job.action).toEqual({ kind: 'cover', how: 'filter', filter: 50 });
    job.alarmTest({ reading: '70' });
    expect(job.of('issue-opened')).toEqual([]);
  });

  it('a turn after the tests voids them: the pair is aligned and proven again', () => {
    const job = TableCommissioning.aligned();
    job.alarmTest();
    job.faultTest();
    job.say('emitter', 'vertical a quarter clockwise');
    expect(missing(job)).toEqual(
      expect.arrayContaining([{ kind: 'accept' }, { kind: 'proof', proof: 'alarm' }]),
    );
  });

  it('outputs restored and then a turn: they must be isolated again', () => {
    const job = TableCommissioning.aligned();
    job.alarmTest();
    job.faultTest();
    job.finish();
    job.say('emitter', 'vertical a quarter clockwise');
    expect(job.action).toMatchObject({ kind: 'confirm-item', item: 'outputs-isolated' });
  });
});

describe('signing', () => {
  const proven = () => {
    const job = TableCommissioning.aligned();
    job.alarmTest();
    job.faultTest();
    job.finish();
    return job;
  };

  it('is refused with the outputs still isolated, and says so', () => {
    const job = TableCommissioning.aligned();
    job.alarmTest();
    job.faultTest();
    job.say('panel', 'yes');
    job.seconds(6).say('panel', '140');
    expect(() => job.sign()).toThrow('alarm outputs restored');
  });

  it('is refused while an issue is open', () => {
    const job = TableCommissioning.aligned();
    job.alarmTest({ after: 3 });
    expect(() => job.sign()).toThrow('open issue');
  });

  it('is refused when the record has grown since it was read', () => {
    const job = proven();
    expect(() => job.sign(job.state.count - 1)).toThrow('has grown');
  });

  it('goes into the log, ends the work, and any later report shows as a change', () => {
    const job = proven();
    job.sign();
    expect(job.state.signed).toMatchObject({ name: 'R. Example' });
    expect(job.action).toEqual({ kind: 'finished' });
    job.input({ kind: 'link', seat: 'panel', online: false });
    expect(job.state.changedBy).toBeUndefined();
    job.say('panel', '139');
    expect(job.state.changedBy).toBeDefined();
  });
});

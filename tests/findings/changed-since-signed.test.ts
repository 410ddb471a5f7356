import { describe, expect, it } from 'vitest';
import { changedSinceSigned } from '../../src/findings/changed-since-signed.ts';
import type { Actor, Fact } from '../../src/model/facts.ts';
import type { Severity } from '../../src/model/finding.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { LoggedJob } from '../../src/simulator/logged-job.ts';
import { photoOf } from '../../src/simulator/photos.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { playedVisit } from './site.ts';

const SIGNED = playedVisit();
const turn: Fact = { type: 'move', axis: 'vertical', eighths: 1 };
const reading: Fact = { type: 'reading', reading: { kind: 'value', value: 139 } };
const item = (
  list: 'before' | 'after',
  name: 'outputs-isolated' | 'outputs-restored' | 'covers-on',
  done = true,
): Fact => ({
  type: 'item',
  list,
  item: name,
  done,
});
const said: Fact = { type: 'said', seat: 'panel', via: 'typed', text: 'roger' };
const remark: Fact = { type: 'remark', seat: 'panel', text: 'Nice hall' };
const covered: Fact = { type: 'path', state: 'blocked' };
const photo: Fact = photoOf('Panel');
const removed: Fact = { type: 'photo-removed', photo: SIGNED.length, why: 'A face is in it' };
const clear: Fact = { type: 'path', state: 'clear' };

/** What a record says once these were added after its signature. */
function after(facts: readonly Fact[], actor: Actor = 'panel') {
  const job = new LoggedJob(SIGNED[0] ? 'visit-1000' : '', 0);
  const last = SIGNED.at(-1);
  if (!last) throw new Error('an empty visit');
  job.now = last.at + 60_000;
  job.entries.push(...SIGNED);
  job.head = { ...job.head, count: SIGNED.length };
  job.state = SIGNED.reduce(fold, EMPTY);
  for (const fact of facts) job.write({ actor, fact });
  const { visit } = new VisitRecord(job);
  return visit ? changedSinceSigned(visit).map(({ severity }) => severity) : [];
}

describe('a change after the signature is as serious as its consequence', () => {
  it.each<[string, Fact[], Severity[]]>([
    ['a phone that comes back', [{ type: 'link', seat: 'panel', online: true }], []],
    ['words', [said], ['note']],
    ['a remark', [said, remark], ['note']],
    ['noise', [{ type: 'unheard', seat: 'panel', why: 'silence' }], ['note']],
    ['a pause', [{ type: 'pause' }], ['note']],
    ['a photo', [photo], ['note']],
    ['a photo added and its picture removed', [photo, removed], ['question']],
    ['a picture removed', [removed], ['question']],
    ['a reading', [reading], ['question']],
    ['a remark, then a reading', [remark, reading], ['question']],
    ['what the panel shows', [{ type: 'panel', shows: 'fault' }], ['question']],
    ['a cover put on and taken off', [covered, clear], ['question']],
    ['a cover left on', [clear, covered], ['serious']],
    ['a turn', [turn], ['serious']],
    ['a turn, hidden between remarks', [remark, turn, remark], ['serious']],
    ['a gain change', [{ type: 'gain', change: 'lowered' }], ['serious']],
    ['an aim by eye', [{ type: 're-aimed' }], ['serious']],
    ['outputs isolated', [item('before', 'outputs-isolated')], ['serious']],
    [
      'outputs isolated and restored',
      [item('before', 'outputs-isolated'), item('after', 'outputs-restored')],
      ['question'],
    ],
    ['covers taken off', [item('after', 'covers-on', false)], ['serious']],
    ['covers said to be on again', [item('after', 'covers-on')], ['question']],
    ['an issue', [{ type: 'issue-opened', about: 1, text: 'Wrong zone.' }], ['serious']],
    [
      'a reading taken back',
      [reading, { type: 'retract', target: SIGNED.length, why: 'undo' }],
      ['question'],
    ],
    ['a turn taken back', [turn, { type: 'retract', target: SIGNED.length, why: 'undo' }], ['serious']],
    [
      'a turn from before the signature taken back',
      [{ type: 'retract', target: turnOf(), why: 'undo' }],
      ['serious'],
    ],
  ])('%s', (_, facts, severities) => {
    expect(after(facts)).toEqual(severities);
  });
});

function turnOf(): number {
  return SIGNED.find(({ fact }) => fact.type === 'move')?.seq ?? -1;
}

import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/model/facts.ts';
import type { FindingId, Severity } from '../../src/model/finding.ts';
import type { PairStatus } from '../../src/model/pair-status.ts';
import { statusOf } from '../../src/record/status.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import type { Plant } from '../../src/simulator/plants.ts';
import type { JobState } from '../../src/visit/state.ts';
import { playedVisit } from '../findings/site.ts';
import {
  accepted,
  answered,
  atSecond,
  followedBy,
  jobAfter,
  LATER,
  type Step,
  seqOf,
  turned,
  WHOLE_VISIT,
  without,
} from '../visit/record.ts';

const signed: Fact = {
  type: 'signed',
  name: 'R. Example',
  role: 'Supervisor',
  signature: { kind: 'typed', text: 'R. Example' },
  head: { job: 'job-on-the-table', count: 23, hash: '0'.repeat(64) },
  findings: [],
};
const isolates = answered('before', 'outputs-isolated');
const upTo = (name: string): Step[] => WHOLE_VISIT.slice(0, seqOf(name));
const tested = upTo('the wire broken and seen');
const isolated = seqOf('the outputs isolated') - 1;
const notIsolated = (steps: readonly Step[]): Step[] => [
  ...steps.slice(0, isolated),
  ...steps.slice(isolated + 1),
];

/** Every stage of the work, with the outputs in service and isolated. */
const STAGES: [PairStatus, readonly Step[], readonly Step[]][] = [
  ['aligning', followedBy([turned]), followedBy([turned, isolates])],
  ['aligned', followedBy([turned, accepted]), followedBy([turned, accepted, isolates])],
  ['proven', WHOLE_VISIT, followedBy([isolates])],
  ['signed', followedBy([signed]), followedBy([isolates, signed])],
];

const found = (severity: Severity, id: FindingId = 'clock-back') => [{ id, severity }];
const shown = (steps: readonly Step[], findings: readonly { id: FindingId; severity: Severity }[] = []) =>
  statusOf(jobAfter(steps), atSecond(LATER), undefined, findings);

describe('the status', () => {
  /** With the outputs in service: no finding, a note, a question, a serious one; then the same isolated. */
  it.each<[PairStatus, PairStatus[], PairStatus[]]>([
    [
      'aligning',
      ['aligning', 'aligning', 'aligning', 'needs-attention'],
      ['isolated', 'isolated', 'isolated', 'needs-attention'],
    ],
    [
      'aligned',
      ['aligned', 'aligned', 'aligned', 'needs-attention'],
      ['isolated', 'isolated', 'isolated', 'needs-attention'],
    ],
    [
      'proven',
      ['proven', 'proven', 'proven', 'needs-attention'],
      ['needs-attention', 'needs-attention', 'needs-attention', 'needs-attention'],
    ],
    [
      'signed',
      ['signed', 'signed', 'signed', 'needs-attention'],
      ['needs-attention', 'needs-attention', 'needs-attention', 'needs-attention'],
    ],
  ])('of a pair that is %s is %j in service and %j isolated', (stage, inService, whenIsolated) => {
    const [, free, held] = STAGES.find(([name]) => name === stage) ?? [];
    const all = [[], found('note'), found('question'), found('serious')];
    expect(all.map((findings) => shown(free ?? [], findings))).toEqual(inService);
    expect(all.map((findings) => shown(held ?? [], findings))).toEqual(whenIsolated);
  });

  it.each<[FindingId, PairStatus, PairStatus]>([
    ['unproven', 'aligned', 'isolated'],
    ['outputs-isolated', 'needs-attention', 'isolated'],
    ['not-accepted', 'needs-attention', 'needs-attention'],
    ['override', 'needs-attention', 'needs-attention'],
    ['restored-unready', 'needs-attention', 'needs-attention'],
  ])('says %s itself, or needs attention: aligned %s, isolated %s', (id, aligned, whenIsolated) => {
    const [, free, held] = STAGES[1] ?? [];
    expect(shown(free ?? [], found('serious', id))).toBe(aligned);
    expect(shown(held ?? [], found('serious', id))).toBe(whenIsolated);
  });

  it('is never calm for what a signature does not excuse: a test that did not pass', () => {
    expect(shown(followedBy([signed]), found('serious', 'unproven'))).toBe('needs-attention');
  });

  it('counts the tests of a pair whose outputs were never isolated as they are', () => {
    expect(shown(notIsolated(tested))).toBe('aligned');
    expect(shown(without('the outputs isolated'))).toBe('proven');
  });

  it.each([
    [undefined, undefined, 'isolated'],
    [true, undefined, 'isolated'],
    [false, true, 'isolated'],
    [false, undefined, 'needs-attention'],
    [false, false, 'needs-attention'],
  ])(
    'isolated, with the panel phone there (%s) and the ladder phone (%s), is %s',
    (panel, emitter, status) => {
      const seat = (online: boolean | undefined) =>
        online === undefined ? undefined : { device: 'A phone', online };
      const seats = { panel: seat(panel), emitter: seat(emitter) };
      const state: JobState = { ...jobAfter(tested), seats };
      expect(statusOf(state, atSecond(LATER))).toBe(status);
    },
  );

  it.each<[Plant, PairStatus]>([
    ['words-since', 'signed'],
    ['photo-since', 'signed'],
    ['photo-removed', 'signed'],
    ['photo-removed-since', 'needs-attention'],
    ['read-since', 'needs-attention'],
    ['covered-since', 'needs-attention'],
    ['isolated-since', 'needs-attention'],
    ['touched-since', 'needs-attention'],
    ['gain-since', 'needs-attention'],
    ['told-nobody', 'signed'],
    ['covers-off', 'needs-attention'],
    ['panel-in-fault', 'needs-attention'],
    ['clock-back', 'needs-attention'],
    ['excused', 'signed-not-proven'],
    ['left-unaccepted', 'needs-attention'],
    ['hour-of-roger', 'signed'],
    ['roger-at-the-end', 'proven'],
  ])('of a played visit with %s is %s', (plant, status) => {
    expect(new VisitRecord({ entries: playedVisit([plant]) }).status).toBe(status);
  });
});

import { describe, expect, it } from 'vitest';
import type { Input } from '../../src/conversation/input.ts';
import { respond } from '../../src/conversation/respond.ts';
import type { Actor, Fact, FactOf, Seat } from '../../src/model/facts.ts';
import { PHOTO_BYTES_MOST, PHOTOS_BYTES_MOST, PHOTOS_MOST } from '../../src/model/photo.ts';
import { photoOf } from '../../src/simulator/photos.ts';
import { EMPTY, fold, type JobState } from '../../src/visit/state.ts';
import { playedVisit } from '../findings/site.ts';

const SIGNED = playedVisit();
const end = SIGNED.findIndex(({ fact }) => fact.type === 'signed');
const [signed, unsigned] = [SIGNED, SIGNED.slice(0, end)].map((log) => log.reduce(fold, EMPTY)) as [
  JobState,
  JobState,
];

const photo = (bytes = 1_000): FactOf<'photo'> => ({ ...photoOf('Label'), bytes });
const withFacts = (state: JobState, actor: Actor, ...facts: Fact[]): JobState =>
  facts.reduce((before, fact) => fold(before, { seq: before.count, at: 0, actor, fact }), state);
const take = (state: JobState, fact = photo(), by: Seat | 'supervisor' = 'panel') =>
  answer(state, { kind: 'photo', by, fact });
const remove = (state: JobState, seq: number, by: Seat | 'supervisor') =>
  answer(state, {
    kind: 'remove-photo',
    by,
    fact: { type: 'photo-removed', photo: seq, why: 'A face is in it' },
  });

/** The kinds of the facts that an input leads to, or why it is refused. */
function answer(state: JobState, input: Input) {
  const response = respond(state, input, 0);
  return response.kind === 'refused'
    ? response.reason
    : response.drafts.map(({ actor, fact }) => `${actor} ${fact.type}`);
}

describe('the room that a record has for photos', () => {
  it.each([
    [PHOTOS_MOST - 1, ['panel photo']],
    [PHOTOS_MOST, 'too-long'],
  ])('with %i there: one more gives %j', (there, given) => {
    expect(take(withFacts(unsigned, 'panel', ...Array.from({ length: there }, () => photo())))).toEqual(
      given,
    );
  });

  it('is free again where one was removed', () => {
    const full = withFacts(unsigned, 'panel', ...Array.from({ length: PHOTOS_MOST }, () => photo()));
    const less = withFacts(full, 'panel', { type: 'photo-removed', photo: unsigned.count, why: 'Blurred' });
    expect([take(full), take(less)]).toEqual(['too-long', ['panel photo']]);
    const same = withFacts(less, 'panel', {
      type: 'photo-removed',
      photo: unsigned.count,
      why: 'Blurred again',
    });
    expect(take(withFacts(same, 'panel', photo()))).toBe('too-long');
  });

  it.each([
    [0, ['panel photo']],
    [1, 'too-long'],
  ])('in bytes: %i more than there is room for gives %j', (more, given) => {
    const there = Array.from({ length: PHOTOS_BYTES_MOST / PHOTO_BYTES_MOST - 1 }, () =>
      photo(PHOTO_BYTES_MOST),
    );
    const left = withFacts(unsigned, 'panel', ...there, photo(PHOTO_BYTES_MOST - 100));
    expect(take(left, photo(100 + more))).toEqual(given);
  });
});

describe('who may add and remove a photo', () => {
  it.each(['panel', 'emitter', 'supervisor'] as const)('%s adds one, also after the signature', (by) => {
    expect(take(unsigned, photo(), by)).toEqual([`${by} photo`]);
    expect(take(signed, photo(), by)).toEqual([`${by} photo`]);
  });

  it.each([
    ['panel', 'panel', ['panel photo-removed'], 'read-only'],
    ['panel', 'emitter', 'read-only', 'read-only'],
    ['emitter', 'panel', 'read-only', 'read-only'],
    ['emitter', 'emitter', ['emitter photo-removed'], 'read-only'],
    ['supervisor', 'panel', 'read-only', 'read-only'],
    ['panel', 'supervisor', ['supervisor photo-removed'], ['supervisor photo-removed']],
    ['supervisor', 'supervisor', ['supervisor photo-removed'], ['supervisor photo-removed']],
  ] as const)(
    'taken by %s, removed by %s: %j before the signature, %j after it',
    (taker, by, before, after) => {
      expect(remove(withFacts(unsigned, taker, photo()), unsigned.count, by)).toEqual(before);
      expect(remove(withFacts(signed, taker, photo()), signed.count, by)).toEqual(after);
    },
  );

  it('nobody removes what is no photo, or is removed already', () => {
    const gone = withFacts(unsigned, 'panel', photo(), {
      type: 'photo-removed',
      photo: unsigned.count,
      why: 'Blurred',
    });
    expect(remove(gone, unsigned.count, 'panel')).toBe('bad-target');
    expect(remove(unsigned, 0, 'supervisor')).toBe('bad-target');
    expect(remove(unsigned, unsigned.count, 'supervisor')).toBe('bad-target');
  });

  it('no photo comes before a job is opened', () => {
    expect(take(EMPTY)).toBe('bad-target');
  });

  it('the first entry of the answer is the one that the picture is stored with', () => {
    const response = respond(unsigned, { kind: 'photo', by: 'panel', fact: photo() }, 0);
    expect(response.kind === 'refused' ? [] : response.drafts[0]?.fact.type).toBe('photo');
  });
});

describe('a photo after the signature', () => {
  it('is the first entry that the signature does not cover', () => {
    expect(withFacts(signed, 'panel', photo()).changedBy).toBe(signed.count);
    expect(withFacts(unsigned, 'panel', photo()).changedBy).toBeUndefined();
  });
});

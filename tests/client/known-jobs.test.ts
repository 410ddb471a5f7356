import { describe, expect, it } from 'vitest';
import { memoryStorage } from '../../client/browser/storage.ts';
import { forgetJob, type KnownJob, knownJobs, rememberJob } from '../../client/saved/known-jobs.ts';

const hall: KnownJob = { job: 'a', title: 'Hall, B1', stand: 'open', seenAt: 1, watch: 'key' };
const yard: KnownJob = { job: 'b', title: 'Yard, B2', stand: 'signed', seenAt: 2 };

describe('the jobs that a phone knows', () => {
  it('are kept once each, the last seen first, as they last stood', () => {
    const storage = memoryStorage();
    for (const seen of [hall, yard, { ...hall, stand: 'accepted', seenAt: 3 } as const])
      rememberJob(storage, seen);
    expect(knownJobs(storage)).toEqual([{ ...hall, stand: 'accepted', seenAt: 3 }, yard]);
  });

  it('keep the key of the record when another seat of the same job is taken without it', () => {
    const storage = memoryStorage();
    rememberJob(storage, hall);
    const { watch, ...without } = hall;
    rememberJob(storage, { ...without, seenAt: 4 });
    expect(knownJobs(storage)).toEqual([{ ...hall, seenAt: 4 }]);
  });

  it('forget one, with its key, and no other', () => {
    const storage = memoryStorage();
    rememberJob(storage, hall);
    rememberJob(storage, yard);
    forgetJob(storage, 'a');
    expect(knownJobs(storage)).toEqual([yard]);
    expect(JSON.stringify(storage.read('jobs'))).not.toContain('key');
  });

  it.each([
    ['nothing', undefined],
    ['no list', { job: 'a' }],
    ['an empty place', [null]],
    ['a stand that nobody knows', [{ ...hall, stand: 'proven' }]],
    ['no time', [{ ...hall, seenAt: 'today' }]],
  ])('are none where %s is kept', (_, kept) => {
    const storage = memoryStorage();
    storage.write('jobs', kept ?? null);
    expect(knownJobs(storage)).toEqual([]);
  });

  it('are twenty at most: the oldest goes', () => {
    const storage = memoryStorage();
    for (let n = 0; n < 21; n++) rememberJob(storage, { ...yard, job: `${n}` });
    expect(knownJobs(storage).map(({ job }) => job)).toEqual(
      Array.from({ length: 20 }, (_, i) => `${20 - i}`),
    );
  });
});

import { describe, expect, it, vi } from 'vitest';
import { wholeLog } from '../../server/record/files.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { seal } from '../../src/log/chain.ts';
import { toJsonLines } from '../../src/log/json-lines.ts';
import type { Fact } from '../../src/model/facts.ts';
import { FORGOTTEN } from '../../src/model/forgotten.ts';
import { verified } from '../verify/checked.ts';
import { serve } from './house.ts';
import { ManualClock } from './manual-clock.ts';
import { post, SETUP } from './phone.ts';

const DAY_MS = 24 * 60 * 60_000;
const DAYS = 30;

/** A job with a named panel, whose last entry is so old: in ms beside the days that names are kept. */
async function jobOf(more: number, later: readonly Fact[] = []) {
  const store = new MemoryStore();
  // The store outlives its server, as a file does.
  store.close = async () => {};
  const clock = new ManualClock();
  const { url, close } = await serve({ store, clock });
  const body = { setup: SETUP, person: { name: 'A. Example' } };
  const { job } = (await (await post(url, '/api/jobs', body)).json()) as { job: string };
  await close();
  const last = (await wholeLog(store, job)).entries.at(-1)?.at ?? 0;
  for (const fact of later) {
    clock.advance(DAY_MS);
    await store.append(job, [seal(await store.head(job), { actor: 'server', fact }, clock.now(), undefined)]);
  }
  clock.advance(last - clock.now() + DAYS * DAY_MS + more);
  await serve({ store, clock, keepNamesDays: DAYS });
  return { store, job };
}

describe('R113: a server that keeps names for so many days', () => {
  it('forgets those of a record on the day, by itself; the record says so, and the chain holds', async () => {
    const { store, job } = await jobOf(0);
    await vi.waitFor(async () => expect(await store.named()).toEqual([]));
    const { entries, head } = await wholeLog(store, job);
    expect(entries.at(-1)).toMatchObject({
      actor: 'server',
      fact: {
        type: 'names-forgotten',
        entries: [1],
        why: 'Names are kept for 30 days on this server',
        afterDays: DAYS,
      },
    });
    expect(entries[1]?.fact).toMatchObject({ person: { name: FORGOTTEN } });
    expect(await store.audit(job)).toBeUndefined();
    expect(verified(toJsonLines(entries, head))).toMatchObject({ ok: true });
  });

  it('is not put off by a picture that went by age, or by a name that was forgotten before', async () => {
    const { store } = await jobOf(0, [
      { type: 'photo-removed', photo: 0, why: 'Pictures are kept for 5 days', afterDays: 5 },
      { type: 'names-forgotten', entries: [0], why: 'Asked for' },
    ]);
    await vi.waitFor(async () => expect(await store.named()).toEqual([]));
  });

  it('is put off by a picture that somebody removed', async () => {
    const { store } = await jobOf(0, [{ type: 'photo-removed', photo: 0, why: 'A face is in it' }]);
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(await store.named()).toHaveLength(1);
  });

  it('forgets none a moment earlier', async () => {
    const { store, job } = await jobOf(-1);
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(await store.named()).toHaveLength(1);
    expect((await store.head(job)).count).toBe(2);
  });
});

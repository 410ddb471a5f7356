import { describe, expect, it, vi } from 'vitest';
import { layDown } from '../../server/demo/site-fixture.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { findFault, headAfter, seal } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { FactOf } from '../../src/model/facts.ts';
import { PHOTO_GONE } from '../../src/phrases/photos.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { picture } from '../photos/pictures.ts';
import { serve } from './house.ts';
import { ManualClock } from './manual-clock.ts';
import { bothIn, newId } from './phone.ts';
import { demo, visitTo } from './played-site.ts';

const DAY_MS = 24 * 60 * 60_000;
const file = await picture();

/** A job with two photos, of which one was taken just as long ago as pictures are kept, and one a moment later. */
async function jobWithPhotos(keepPicturesDays: number, more: number) {
  const store = new MemoryStore();
  const clock = new ManualClock();
  const { url, close } = await serve({ store, clock });
  const { job } = await bothIn(url);
  const take = async (): Promise<number> => {
    const query = new URLSearchParams({ id: newId(), shows: 'label' });
    const headers = { authorization: `Bearer ${job.token}`, 'content-type': 'image/jpeg' };
    const answer = await fetch(`${url}/api/photo?${query}`, {
      method: 'POST',
      headers,
      body: new Uint8Array(file),
    });
    return ((await answer.json()) as { seq: number }).seq;
  };
  const old = await take();
  clock.advance(1);
  const young = await take();
  // The store outlives its server, as a file does.
  store.close = async () => {};
  await close();
  clock.advance(keepPicturesDays * DAY_MS - 1 + more);
  const again = await serve({ store, clock, keepPicturesDays });
  const entries = () => store.read(job.job, -1, 10_000);
  const show = (seq: number) =>
    fetch(`${again.url}/api/photo?seq=${seq}`, { headers: { authorization: `Bearer ${job.token}` } });
  return { store, job: job.job, old, young, entries, show };
}

const removals = (entries: readonly Entry[]) => entries.filter(({ fact }) => fact.type === 'photo-removed');

describe('R93: a server that keeps pictures for so many days', () => {
  it('removes one on the day, by itself, and not a moment earlier; its entry stays, and the chain holds', async () => {
    const { store, job, old, young, entries, show } = await jobWithPhotos(30, 0);
    await vi.waitFor(async () => expect(removals(await entries())).toHaveLength(1));
    const all = await entries();
    expect(removals(all)[0]).toMatchObject({
      actor: 'server',
      fact: { photo: old, why: 'Pictures are kept for 30 days on this server', afterDays: 30 },
    });
    expect(await store.enclosed()).toEqual([{ job, seq: young }]);
    expect(await (await show(old)).json()).toMatchObject({ text: PHOTO_GONE });
    expect((await show(young)).status).toBe(200);
    expect(findFault(all, headAfter(all.at(-1) as Entry))).toBeUndefined();
    expect(all.reduce(fold, EMPTY).photos.map(({ removed }) => removed?.photo)).toEqual([old, undefined]);
  });

  it('removes the other a moment later, too', async () => {
    const { store, entries } = await jobWithPhotos(30, 1);
    await vi.waitFor(async () => expect(removals(await entries())).toHaveLength(2));
    expect(await store.enclosed()).toEqual([]);
  });

  it('removes none that is younger', async () => {
    const { store, entries } = await jobWithPhotos(30, -1);
    // The round of the start is over when a later one of the store's answers is.
    await vi.waitFor(async () => expect((await entries()).length).toBeGreaterThan(3));
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(removals(await entries())).toEqual([]);
    expect(await store.enclosed()).toHaveLength(2);
  });
});

describe('the signature of a visit whose picture goes when its time is over', () => {
  const { job } = visitTo('S3');
  const photo = 5;
  const removed = (afterDays?: number): FactOf<'photo-removed'> => ({
    type: 'photo-removed',
    photo,
    why: 'Kept long enough',
    ...(afterDays !== undefined && { afterDays }),
  });

  it('still stands, and does not after a picture that somebody removed', async () => {
    const store = new MemoryStore();
    await layDown(store, demo);
    const entries = await store.read(job, -1, 10_000);
    const signed = entries.reduce(fold, EMPTY);
    expect([signed.signed !== undefined, signed.changedBy]).toEqual([true, undefined]);
    const changeBy = (fact: FactOf<'photo-removed'>) => {
      const last = entries.at(-1) as Entry;
      return fold(signed, seal(headAfter(last), { actor: 'server', fact }, last.at + 1)).changedBy;
    };
    expect(changeBy(removed(365))).toBeUndefined();
    expect(changeBy(removed())).toBe(entries.length);
  });
});

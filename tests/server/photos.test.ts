import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { layDown } from '../../server/demo/site-fixture.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { readArchive } from '../../src/log/archive.ts';
import { enclosureHash } from '../../src/log/enclosure.ts';
import type { FactOf, Seat } from '../../src/model/facts.ts';
import { PHOTO_BYTES_MOST, PHOTO_SIDE_LEAST, PHOTO_SIDE_MOST } from '../../src/model/photo.ts';
import { checkPhotos } from '../../src/verify/photos.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { ofBytes, picture, variant } from '../photos/pictures.ts';
import { verified } from '../verify/checked.ts';
import { serve } from './house.ts';
import { bothIn, newId } from './phone.ts';
import { demo, tokenOf, unsigned, visitTo } from './played-site.ts';

const file = await picture();
const { job } = visitTo('S3');

/** Sends a JPEG as a phone or a desk does. */
async function send(
  url: string,
  token: string,
  query: Record<string, string>,
  bytes: Uint8Array = file,
  path = 'photo',
) {
  const all = new URLSearchParams({ id: newId(), shows: 'label', ...query });
  const headers = { authorization: `Bearer ${token}`, 'content-type': 'image/jpeg' };
  const body = new Uint8Array(bytes);
  const response = await fetch(`${url}/api/${path}?${all}`, { method: 'POST', headers, body });
  return {
    status: response.status,
    ...((await response.json()) as { seq?: number; reason?: string; text?: string }),
  };
}

async function remove(url: string, token: string, body: object, path = 'photo/remove') {
  const headers = { authorization: `Bearer ${token}`, 'content-type': 'application/json' };
  const sent = JSON.stringify({ id: newId(), why: 'A face is in it', ...body });
  const response = await fetch(`${url}/api/${path}`, { method: 'POST', headers, body: sent });
  return {
    status: response.status,
    ...((await response.json()) as { seq?: number; reason?: string; text?: string }),
  };
}

const show = (url: string, token: string, query: string, path = 'photo') =>
  fetch(`${url}/api/${path}?${query}`, { headers: { authorization: `Bearer ${token}` } });

/** A job with both phones in it, without a site. */
async function jobWithCrew() {
  const store = new MemoryStore();
  const { url } = await serve({ store });
  const { job, panel, emitter, emitterToken } = await bothIn(url);
  const tokens = { panel: job.token, emitter: emitterToken, watcher: job.watch };
  const entries = () => store.read(job.job, -1, 10_000);
  return { store, url, id: job.job, tokens, panel, emitter, entries };
}

/** A site with a visit that is not signed, or is. */
async function siteWithVisit(played = unsigned('S3')) {
  const store = new MemoryStore();
  const { desk, watch } = await layDown(store, played);
  const { url } = await serve({ store });
  const seat = (name: Seat) => tokenOf(store, job, name);
  const state = async () => (await store.read(job, -1, 10_000)).reduce(fold, EMPTY);
  return { store, url, desk, watch, seat, state };
}

describe('R54: a photo', () => {
  it('of either seat is named in the log by its hash, told to both phones, and kept as it was sent', async () => {
    const { store, url, id, tokens, panel, emitter, entries } = await jobWithCrew();
    for (const seat of ['panel', 'emitter'] as const) {
      const { status, seq = -1 } = await send(url, tokens[seat], { caption: 'Serial number' });
      expect(status).toBe(201);
      const told = await (seat === 'panel' ? emitter : panel).entry((entry) => entry.seq === seq);
      const fact = told.fact as FactOf<'photo'>;
      expect(told).toMatchObject({ actor: seat, fact: { type: 'photo', width: 64, height: 48 } });
      expect(fact).toMatchObject({ bytes: file.length, shows: 'label', caption: 'Serial number' });
      const kept = await store.enclosure(id, seq);
      expect(kept && enclosureHash(kept)).toBe(fact.hash);
      expect(kept?.content).toEqual(file);
    }
    const salts = await Promise.all((await entries()).map(({ seq }) => store.enclosure(id, seq)));
    const given = salts.flatMap((enclosure) => enclosure?.salt ?? []);
    expect([given.length, new Set(given).size]).toEqual([2, 2]);
    expect(JSON.stringify(await entries())).not.toContain(given[0]);
  });

  it('that is sent again is the same photo', async () => {
    const { store, url, id, tokens, entries } = await jobWithCrew();
    const again = newId();
    const first = await send(url, tokens.panel, { id: again });
    const kept = await store.enclosure(id, first.seq ?? -1);
    expect(await send(url, tokens.panel, { id: again })).toEqual(first);
    expect((await entries()).filter(({ fact }) => fact.type === 'photo')).toHaveLength(1);
    expect(await store.enclosure(id, first.seq ?? -1)).toEqual(kept);
  });

  it('is shown to whoever may read the log, and to nobody else', async () => {
    const { url, tokens } = await jobWithCrew();
    const { seq } = await send(url, tokens.panel, {});
    for (const token of Object.values(tokens)) {
      const response = await show(url, token, `seq=${seq}`);
      expect(new Uint8Array(await response.arrayBuffer())).toEqual(file);
      expect(response.headers.get('content-type')).toBe('image/jpeg');
      expect(response.headers.get('x-content-type-options')).toBe('nosniff');
      // Once it is removed, no browser may still have it.
      expect(response.headers.get('cache-control')).toBe('no-store');
    }
    const other = await bothIn(url);
    expect((await show(url, other.job.token, `seq=${seq}`)).status).toBe(404);
    expect((await show(url, 'A'.repeat(22), `seq=${seq}`)).status).toBe(401);
    expect((await fetch(`${url}/api/photo?seq=${seq}&token=${tokens.panel}`)).status).toBe(401);
    expect((await show(url, tokens.panel, 'seq=0')).status).toBe(404);
    expect((await show(url, tokens.panel, 'seq=9999')).status).toBe(404);
    expect((await show(url, tokens.panel, 'seq=x')).status).toBe(400);
  });

  it('is not taken from a watcher, or from a seat that another phone has now', async () => {
    const { store, url, id, tokens } = await jobWithCrew();
    expect(await send(url, tokens.watcher, {})).toMatchObject({ status: 403, reason: 'read-only' });
    await store.append(id, [], { revoke: 'emitter' });
    expect(await send(url, tokens.emitter, {})).toMatchObject({ status: 401, reason: 'seat-lost' });
    expect((await show(url, tokens.emitter, 'seq=1')).status).toBe(401);
  });

  it('comes from the desk of the site, and is shown to both its tokens', async () => {
    const { url, desk, watch, state } = await siteWithVisit();
    const { status, seq } = await send(url, desk, { job, shows: 'other' }, file, 'site/photo');
    expect(status).toBe(201);
    expect((await state()).photos).toMatchObject([{ seq, by: 'supervisor', shows: 'other' }]);
    for (const token of [desk, watch])
      expect((await show(url, token, `job=${job}&seq=${seq}`, 'site/photo')).status).toBe(200);
    expect(await send(url, watch, { job }, file, 'site/photo')).toMatchObject({ reason: 'read-only' });
    expect(await send(url, desk, { job: 'another-job1' }, file, 'site/photo')).toMatchObject({
      reason: 'bad-target',
    });
    expect((await show(url, desk, `job=another-job1&seq=${seq}`, 'site/photo')).status).toBe(404);
    expect((await show(url, desk, `seq=${seq}`, 'site/photo')).status).toBe(404);
  });
});

describe('R55: a picture', () => {
  it.each([
    ['at the most bytes', PHOTO_BYTES_MOST, 201, undefined],
    ['a byte above', PHOTO_BYTES_MOST + 1, 413, 'too-long'],
  ])('%s is taken or refused', async (_, bytes, status, reason) => {
    const { url, tokens, entries } = await jobWithCrew();
    expect(await send(url, tokens.panel, {}, ofBytes(file, bytes))).toMatchObject({
      status,
      ...(reason && { reason }),
    });
    expect((await entries()).filter(({ fact }) => fact.type === 'photo')).toHaveLength(reason ? 0 : 1);
  });

  it.each([
    [PHOTO_SIDE_LEAST, PHOTO_SIDE_LEAST, 201],
    [PHOTO_SIDE_LEAST - 1, 100, 400],
    [100, PHOTO_SIDE_LEAST - 1, 400],
    [PHOTO_SIDE_MOST, 20, 201],
    [20, PHOTO_SIDE_MOST, 201],
    [PHOTO_SIDE_MOST + 1, 20, 400],
    [20, PHOTO_SIDE_MOST + 1, 400],
  ])('of %i by %i pixels gives %i', async (width, height, status) => {
    const { url, tokens } = await jobWithCrew();
    const sent = await send(url, tokens.panel, {}, await picture(width, height));
    expect(sent.status).toBe(status);
    if (status === 400) expect(sent.text).toBe('A picture must be 16 to 4096 pixels wide and high.');
  });

  it.each([
    ['placed', /notes of the camera in it, such as the place/],
    ['cmyk', /colours of a printing press/],
    ['png', /not a JPEG/],
  ] as const)('that is %s is refused, with what to do', async (name, words) => {
    const { url, tokens, entries } = await jobWithCrew();
    const sent = await send(url, tokens.panel, {}, await variant[name]());
    expect(sent).toMatchObject({ status: 400, reason: 'bad-message', text: expect.stringMatching(words) });
    expect((await entries()).some(({ fact }) => fact.type === 'photo')).toBe(false);
  });

  it.each<[string, Record<string, string>, number]>([
    ['a caption of 200 letters', { caption: 'x'.repeat(200) }, 201],
    ['of 201', { caption: 'x'.repeat(201) }, 400],
    ['with a letter that nobody sees', { caption: 'left\u202Eright' }, 400],
    ['a subject that there is not', { shows: 'sky' }, 400],
    ['an unknown field', { token: 'x' }, 400],
  ])('with %s is taken or refused', async (_, query, status) => {
    const { url, tokens } = await jobWithCrew();
    expect((await send(url, tokens.panel, query)).status).toBe(status);
  });

  it('too many at once wait', async () => {
    const { url, tokens } = await jobWithCrew();
    const sent = await Promise.all(Array.from({ length: 21 }, () => send(url, tokens.panel, {})));
    expect(sent.map(({ status }) => status).sort()).toEqual([...Array(20).fill(201), 429]);
  });
});

describe('R56: a photo is removed', () => {
  it('by the seat that took it: its entry stays, and its picture is nowhere', async () => {
    const { store, url, id, tokens, entries } = await jobWithCrew();
    const { seq = -1 } = await send(url, tokens.emitter, {});
    expect(await remove(url, tokens.panel, { photo: seq })).toMatchObject({
      status: 403,
      reason: 'read-only',
    });
    expect(await remove(url, tokens.watcher, { photo: seq })).toMatchObject({ status: 403 });
    const again = newId();
    const removed = await remove(url, tokens.emitter, { photo: seq, id: again });
    expect(removed.status).toBe(200);
    expect(await remove(url, tokens.emitter, { photo: seq, id: again })).toEqual(removed);
    expect((await entries())[removed.seq ?? -1]).toMatchObject({
      actor: 'emitter',
      fact: { type: 'photo-removed', photo: seq, why: 'A face is in it' },
    });
    expect(await store.enclosure(id, seq)).toBeUndefined();
    const gone = await show(url, tokens.emitter, `seq=${seq}`);
    expect([gone.status, await gone.json()]).toMatchObject([
      404,
      { text: 'The picture was removed. Its entry stays in the record.' },
    ]);
    expect(await remove(url, tokens.emitter, { photo: seq })).toMatchObject({ reason: 'bad-target' });
  });

  it.each([
    ['ab', 400],
    ['abc', 200],
    ['x'.repeat(500), 200],
    ['x'.repeat(501), 400],
  ])('with a reason: %s gives %i', async (why, status) => {
    const { url, tokens } = await jobWithCrew();
    const { seq } = await send(url, tokens.panel, {});
    expect((await remove(url, tokens.panel, { photo: seq, why })).status).toBe(status);
  });

  it('that is none, or not there: nothing is changed', async () => {
    const { url, tokens, entries } = await jobWithCrew();
    const before = (await entries()).length;
    for (const photo of [0, 99])
      expect(await remove(url, tokens.panel, { photo })).toMatchObject({ reason: 'bad-target' });
    expect((await entries()).length).toBe(before);
  });

  it('after the signature only at the desk', async () => {
    const { url, desk, watch, seat, store } = await siteWithVisit(demo);
    const panel = await seat('panel');
    // Added after the signature: that is allowed, and shows.
    const { seq } = await send(url, panel, {});
    expect(await remove(url, panel, { photo: seq })).toMatchObject({ reason: 'read-only' });
    expect(await remove(url, watch, { job, photo: seq }, 'site/photo/remove')).toMatchObject({
      reason: 'read-only',
    });
    expect(await remove(url, desk, { job, photo: seq }, 'site/photo/remove')).toMatchObject({ status: 200 });
    expect(await store.enclosure(job, seq ?? -1)).toBeUndefined();
  });
});

describe('R57: the archive of a record', () => {
  it('holds the log and every picture that was not removed, and verifies', async () => {
    const { url, tokens } = await jobWithCrew();
    const one = await send(url, tokens.panel, {});
    const two = await send(url, tokens.panel, { shows: 'path' }, await picture(100, 80));
    await remove(url, tokens.panel, { photo: one.seq });
    const response = await show(url, tokens.watcher, '', 'export.zip');
    expect(response.headers.get('content-disposition')).toMatch(
      /^attachment; filename="ladderline-.*\.zip"$/,
    );
    const bytes = new Uint8Array(await response.arrayBuffer());
    expect(Object.keys(unzipSync(bytes)).sort()).toEqual([
      'log.jsonl',
      `photos/${two.seq}.jpg`,
      `photos/${two.seq}.salt`,
    ]);
    const archive = readArchive(bytes);
    const result = verified(archive?.log ?? '');
    expect(result.ok && archive && checkPhotos(result.photos, archive)).toEqual([]);
    expect(result.ok && result.signed.kind).toBe('nobodys');
  });

  it('of a visit comes with both tokens of its site; with none, or of another job, not', async () => {
    const { url, desk, watch } = await siteWithVisit();
    const { seq } = await send(url, desk, { job }, file, 'site/photo');
    for (const token of [desk, watch]) {
      const bytes = new Uint8Array(
        await (await show(url, token, `job=${job}`, 'site/export.zip')).arrayBuffer(),
      );
      expect(readArchive(bytes)?.photos.get(seq ?? -1)?.content).toEqual(file);
    }
    expect((await show(url, desk, 'job=another-job1', 'site/export.zip')).status).toBe(404);
    expect((await fetch(`${url}/api/site/export.zip?job=${job}`)).status).toBe(401);
  });

  it('lacks a picture that the server lost, so that a check of the file finds it', async () => {
    const { store, url, id, tokens } = await jobWithCrew();
    const { seq = -1 } = await send(url, tokens.panel, {});
    await store.append(id, [], {}, { remove: seq });
    const archive = readArchive(
      new Uint8Array(await (await show(url, tokens.panel, '', 'export.zip')).arrayBuffer()),
    );
    const result = verified(archive?.log ?? '');
    expect(result.ok && archive && checkPhotos(result.photos, archive)).toEqual([{ kind: 'missing', seq }]);
    expect(await (await show(url, tokens.panel, `seq=${seq}`)).json()).toMatchObject({
      text: expect.stringContaining('not on the server'),
    });
  });

  it('is as of one moment: a photo that is removed while it is made is removed in it, and not lost', async () => {
    /** Once, somebody removes the photo between the reading of the log and that of the picture. */
    class Removing extends MemoryStore {
      meanwhile?: () => Promise<unknown>;
      override async enclosure(job: string, seq: number) {
        const { meanwhile } = this;
        delete this.meanwhile;
        await meanwhile?.();
        return super.enclosure(job, seq);
      }
    }
    const store = new Removing();
    const { url } = await serve({ store });
    const { job } = await bothIn(url);
    const { seq: photo } = await send(url, job.token, {});
    store.meanwhile = () => remove(url, job.token, { photo });
    const archive = readArchive(
      new Uint8Array(await (await show(url, job.token, '', 'export.zip')).arrayBuffer()),
    );
    const result = verified(archive?.log ?? '');
    expect(result.ok && result.photos[0]?.removed?.why).toBe('A face is in it');
    expect(result.ok && archive && checkPhotos(result.photos, archive)).toEqual([]);
  });

  it('of a job without photos is its log alone', async () => {
    const { url, tokens, panel } = await jobWithCrew();
    await panel.ack(panel.remark('a hall'));
    const bytes = new Uint8Array(await (await show(url, tokens.panel, '', 'export.zip')).arrayBuffer());
    expect(Object.keys(unzipSync(bytes))).toEqual(['log.jsonl']);
  });
});

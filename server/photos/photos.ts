import type { Context } from 'hono';
import type * as z from 'zod/mini';
import { type JpegFault, readJpeg } from '../../src/formats/jpeg.ts';
import { enclosureHash, isEnclosed } from '../../src/log/enclosure.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Seat } from '../../src/model/facts.ts';
import type { JobId, Seq } from '../../src/model/ids.ts';
import { Picture } from '../../src/model/photo.ts';
import { FILE_FAULTS, NO_PHOTO, PHOTO_GONE, PICTURE_LOST } from '../../src/phrases/photos.ts';
import type { RemovePhoto, TakePhoto } from '../../src/protocol/photos.ts';
import { newSalt } from '../guard/secrets.ts';
import { type Answer, refuse } from '../http/http.ts';
import type { Outcome, Room } from '../jobs/room.ts';
import type { Store } from '../store/store.ts';

type By = Seat | 'supervisor';

/** Puts a photo into the record of a job, with its picture beside the log. Never rejects. */
export async function takePhoto(
  room: Room,
  by: By,
  { id, shows, caption }: z.output<typeof TakePhoto>,
  content: Uint8Array,
): Promise<Outcome> {
  const header = readJpeg(content);
  if (header.kind === 'fault') return refusedFile(header.fault);
  const { width, height } = header;
  const picture = Picture.safeParse({ bytes: content.length, width, height });
  if (!picture.success) return refusedFile('size');
  const enclosure = { salt: newSalt(), content };
  const hash = enclosureHash(enclosure);
  const fact = { type: 'photo' as const, hash, ...picture.data, shows, ...(caption && { caption }) };
  return room.submit({ kind: 'photo', by, fact }, id, enclosure);
}

const refusedFile = (fault: JpegFault | 'size'): Outcome => ({
  kind: 'refused',
  reason: 'bad-message',
  text: FILE_FAULTS[fault],
});

/** Never rejects. */
export const removePhoto = (
  room: Room,
  by: By,
  { id, photo, why }: z.output<typeof RemovePhoto>,
): Promise<Outcome> =>
  room.submit({ kind: 'remove-photo', by, fact: { type: 'photo-removed', photo, why } }, id);

/** The picture of a photo, if it is the one that its entry names. Rejects with `StoreFailure`. */
export async function picture(store: Store, job: JobId, seq: Seq): Promise<Answer<Uint8Array>> {
  const [entry] = await store.read(job, seq - 1, 1);
  if (entry?.seq !== seq || entry.fact.type !== 'photo')
    return { kind: 'refused', reason: 'bad-target', text: NO_PHOTO };
  const enclosure = await store.enclosure(job, seq);
  if (enclosure && isEnclosed(enclosure, entry.fact.hash)) return { kind: 'ok', value: enclosure.content };
  const text = (await isRemoved(store, job, seq)) ? PHOTO_GONE : PICTURE_LOST;
  return { kind: 'refused', reason: 'bad-target', text };
}

async function isRemoved(store: Store, job: JobId, seq: Seq): Promise<boolean> {
  for (let after: Seq = seq; ; ) {
    const batch: Entry[] = await store.read(job, after, READ_BATCH);
    if (batch.some(({ fact }) => fact.type === 'photo-removed' && fact.photo === seq)) return true;
    const last = batch.at(-1);
    if (!last) return false;
    after = last.seq;
  }
}

const READ_BATCH = 1_000;

/** Answers with a picture, for a page to show. */
export function give(c: Context, answer: Answer<Uint8Array>): Response {
  if (answer.kind === 'refused') return refuse(c, answer.reason, answer.text, 404);
  c.header('Content-Type', 'image/jpeg');
  return c.body(new Uint8Array(answer.value));
}

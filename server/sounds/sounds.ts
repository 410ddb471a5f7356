import { setImmediate } from 'node:timers/promises';
import type { Context } from 'hono';
import { isEnclosed, soundOf } from '../../src/log/enclosure.ts';
import type { JobId, Seq } from '../../src/model/ids.ts';
import { NO_SOUND, SOUND_LOST, SOUND_OVER } from '../../src/phrases/sound.ts';
import { type Answer, refuse } from '../http/http.ts';
import type { Store } from '../store/store.ts';

/** The sound of an entry, if it is the one that the entry names and its days are not over. Rejects with `StoreFailure`. */
export async function sound(store: Store, job: JobId, seq: Seq, now: number): Promise<Answer<Uint8Array>> {
  const kept = await named(store, job, seq);
  if (!kept) return { kind: 'refused', reason: 'bad-target', text: NO_SOUND };
  if (kept.until <= now) return { kind: 'refused', reason: 'bad-target', text: SOUND_OVER };
  const enclosure = await store.enclosure(job, seq);
  return enclosure && isEnclosed(enclosure, kept.hash)
    ? { kind: 'ok', value: enclosure.content }
    : { kind: 'refused', reason: 'bad-target', text: SOUND_LOST };
}

async function named(store: Store, job: JobId, seq: Seq) {
  const [entry] = await store.read(job, seq - 1, 1);
  return entry?.seq === seq ? soundOf(entry.fact) : undefined;
}

/** Deletes every sound whose days are over, and says how many. Other work is done in between. Rejects with `StoreFailure`. */
export async function deleteOldSounds(store: Store, now: number): Promise<number> {
  let deleted = 0;
  for (const { job, seq } of await store.enclosed()) {
    const kept = await named(store, job, seq);
    if (kept && kept.until <= now) {
      await store.append(job, [], undefined, { remove: seq });
      deleted++;
    }
    await setImmediate();
  }
  return deleted;
}

/** Answers with a sound, for a page to play. */
export function give(c: Context, answer: Answer<Uint8Array>): Response {
  if (answer.kind === 'refused') return refuse(c, answer.reason, answer.text, 404);
  c.header('Content-Type', 'audio/wav');
  return c.body(new Uint8Array(answer.value));
}

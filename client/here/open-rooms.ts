import type { Refusal } from '../../src/model/refusal.ts';
import type { RoomHere } from './room-here.ts';

/** The rooms of this page, each once: two of one log would each write what the other does not know. */
const open = new Map<string, Promise<RoomHere>>();

/** The rules are fetched when it is first gone. Rejects as `RoomHere.load` does. */
export function roomOf(job: string): Promise<RoomHere> {
  const known = open.get(job);
  if (known) return known;
  const loading = import('./room-here.ts').then(({ RoomHere }) => RoomHere.load(job));
  open.set(job, loading);
  // What failed may pass: the next try begins anew.
  loading.catch(() => open.delete(job));
  return loading;
}

/** Ends it, and says why to the phone that this one has met. */
export async function endRoom(job: string, reason: Refusal, text: string): Promise<void> {
  const room = await open.get(job);
  open.delete(job);
  room?.finish(reason, text);
}

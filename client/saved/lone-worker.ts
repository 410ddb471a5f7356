import * as z from 'zod/mini';
import type { Storage } from '../browser/storage.ts';

/** What a person who works alone agreed with somebody, as this phone keeps it. */
export const LoneWorker = z.object({
  /** Minutes of silence after which the phone asks. Absent: it does not ask. */
  minutes: z.optional(z.number().check(z.minimum(2), z.maximum(120))),
  agreed: z.string().check(z.maxLength(200)),
  number: z.string().check(z.maxLength(30)),
});
export type LoneWorker = z.infer<typeof LoneWorker>;

const DRAWER = 'lone-worker';
const NOTHING: LoneWorker = { agreed: '', number: '' };

export const loneWorker = (storage: Storage): LoneWorker =>
  LoneWorker.safeParse(storage.read(DRAWER)).data ?? NOTHING;

export const keepLoneWorker = (storage: Storage, lone: LoneWorker): boolean => storage.write(DRAWER, lone);

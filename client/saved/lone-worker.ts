import { z } from 'zod';
import type { Storage } from '../browser/storage.ts';

/** What a person who works alone agreed with somebody, as this phone keeps it. */
export const LoneWorker = z.object({
  /** Minutes of silence after which the phone asks. Absent: it does not ask. */
  minutes: z.number().min(2).max(120).optional(),
  agreed: z.string().max(200),
  number: z.string().max(30),
});
export type LoneWorker = z.infer<typeof LoneWorker>;

const DRAWER = 'lone-worker';
const NOTHING: LoneWorker = { agreed: '', number: '' };

export const loneWorker = (storage: Storage): LoneWorker =>
  LoneWorker.safeParse(storage.read(DRAWER)).data ?? NOTHING;

export const keepLoneWorker = (storage: Storage, lone: LoneWorker): boolean => storage.write(DRAWER, lone);

import * as z from 'zod/mini';
import { ClientMessage } from '../../src/protocol/socket.ts';
import type { Storage } from '../browser/storage.ts';
import type { Letter, Pending } from './link.ts';

const LETTERS: readonly ClientMessage['t'][] = [
  'say',
  'person',
  'remark',
  'mounted',
  'sound',
  'correct',
  'take-back',
  'camera',
  'sensor',
  'override',
  'hand-over',
  'practise',
  'invite',
];

const Kept = z.array(
  z.object({
    letter: z.pipe(
      ClientMessage.check(z.refine((m) => LETTERS.includes(m.t))),
      z.transform((m) => m as Letter),
    ),
    since: z.number(),
  }),
);

/** Letters that are not acknowledged yet. A reload or a crash of the page does not lose them. */
export interface Outbox {
  load(): Pending[];
  /** False: the browser does not keep it, and it lasts only as long as the page. */
  save(pending: readonly Pending[]): boolean;
}

/** `key` names the seat that the letters come from: another seat on the same phone has its own outbox. */
export function outboxIn(storage: Storage, key: string): Outbox {
  return {
    load() {
      const kept = Kept.safeParse(storage.read(key));
      return kept.success ? kept.data.map((p) => ({ ...p, dueAt: 0 })) : [];
    },
    save(pending) {
      if (pending.length > 0)
        return storage.write(
          key,
          pending.map(({ letter, since }) => ({ letter, since })),
        );
      storage.remove(key);
      return true;
    },
  };
}

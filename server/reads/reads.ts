import type { Logger } from 'pino';
import type { Clock } from '../process/clock.ts';
import { HOUR_MS, type Read } from '../store/reads.ts';
import type { Store } from '../store/store.ts';

interface ReadsDeps {
  readonly store: Pick<Store, 'changeReads'>;
  readonly clock: Clock;
  readonly log: Logger;
}

/** `name`: of who is signed in. */
export const readerOf = (name: string | undefined): Pick<Read, 'reader' | 'name'> =>
  name === undefined ? { reader: 'link', name: '' } : { reader: 'account', name };

/** Writes down who read what: once an hour, however often it is read. */
export class Reads {
  private hour = 0;
  /** Of this hour. */
  private noted = new Map<string, Promise<void>>();

  constructor(private readonly deps: ReadsDeps) {}

  /**
   * Resolves when it is stored. Never rejects: where it cannot be stored, whoever reads a record is not kept from it, and the
   * next time it is tried again.
   */
  note(read: Omit<Read, 'hour'>): Promise<void> {
    const { store, clock, log } = this.deps;
    const hour = Math.floor(clock.now() / HOUR_MS) * HOUR_MS;
    if (hour !== this.hour) this.noted = new Map();
    this.hour = hour;
    const { noted } = this;
    const key = JSON.stringify([read.log, read.what, read.key, read.reader, read.name]);
    const before = noted.get(key);
    if (before) return before;
    const storing = store.changeReads({ note: [{ ...read, hour }] }).catch((err: unknown) => {
      noted.delete(key);
      log.warn({ err, log: read.log }, 'it could not be written down who read a record');
    });
    noted.set(key, storing);
    return storing;
  }
}

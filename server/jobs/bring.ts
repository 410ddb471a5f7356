import { setImmediate } from 'node:timers/promises';
import * as z from 'zod/mini';
import { respond } from '../../src/conversation/respond.ts';
import { type BroughtFault, findBroughtFault, PART } from '../../src/log/brought.ts';
import { headAfter } from '../../src/log/chain.ts';
import { Entry } from '../../src/model/entry.ts';
import type { Refusal } from '../../src/model/refusal.ts';
import { BROUGHT_FAULTS, BROUGHT_OTHER } from '../../src/phrases/brought.ts';
import { BringJob, HOW_MANY_BROUGHT, type JobBrought } from '../../src/protocol/jobs.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { digest, newToken } from '../guard/secrets.ts';
import { type Answer, shaped } from '../http/http.ts';
import type { KeyChange, Store } from '../store/store.ts';
import { type RoomDeps, sealHere } from './room.ts';

const refused = (reason: Refusal, text: string): Answer<never> => ({ kind: 'refused', reason, text });

/** What is sent, before its entries are looked at: to look at thousands takes half a second, and others are served between their parts. */
export const Sent = z.extend(BringJob, { entries: z.array(z.unknown()).check(...HOW_MANY_BROUGHT) });
const Part = z.array(Entry);

async function readEntries(sent: readonly unknown[]): Promise<Answer<Entry[]>> {
  const value: Entry[] = [];
  while (value.length < sent.length) {
    const part = shaped(sent.slice(value.length, value.length + PART), Part);
    if (part.kind === 'refused') return part;
    value.push(...part.value);
    await setImmediate();
  }
  return { kind: 'ok', value };
}

async function faultOf(entries: readonly Entry[]): Promise<BroughtFault | undefined> {
  const looking = findBroughtFault(entries);
  for (;;) {
    const { done, value } = looking.next();
    if (done) return value;
    await setImmediate();
  }
}

/**
 * Takes over the log that a phone has kept alone, as it is, and adds that it was so. A phone that asks again, because the answer
 * was lost, gets it again. Rejects with `StoreFailure`.
 */
export async function bring(
  { store, clock, onStored, telemetry }: RoomDeps,
  { token, entries: sent }: z.output<typeof Sent>,
): Promise<Answer<JobBrought>> {
  const read = await readEntries(sent);
  if (read.kind === 'refused') return read;
  const { value: entries } = read;
  const fault = await faultOf(entries);
  const last = entries.at(-1);
  if (fault || !last) return refused('bad-message', BROUGHT_FAULTS[fault ?? 'damaged']);
  const { job } = last;
  const watch = newToken();
  const answer: Answer<JobBrought> = { kind: 'ok', value: { job, seat: 'panel', watch } };
  const watcher = { token: digest(watch), role: 'watcher' } as const;
  if ((await store.head(job)).count > 0) {
    if (!(await isKnown(store, token, last))) return refused('bad-token', BROUGHT_OTHER);
    await store.append(job, [], { issue: [watcher] });
    return answer;
  }
  const state = entries.reduce(fold, EMPTY);
  const now = clock.now();
  const response = respond(state, { kind: 'brought' }, now);
  if (response.kind === 'refused') return response;
  const added = sealHere(headAfter(last), response.drafts, now, { version: state.logVersion });
  const all = [...entries, ...added.entries];
  const issue: KeyChange['issue'] = [{ token: digest(token), role: 'panel' }, watcher];
  const appended = await store.append(job, all, { issue });
  // Another phone was quicker with the same number.
  if (appended.kind !== 'stored') return refused('bad-token', BROUGHT_OTHER);
  onStored?.(all);
  telemetry.opened('job', job);
  return answer;
}

/** The server has this log, or more of it, from the phone with this token. */
async function isKnown(store: Store, token: string, { job, seq, hash }: Entry): Promise<boolean> {
  const pass = await store.pass(digest(token));
  if (pass?.job !== job || pass.role !== 'panel' || pass.revoked) return false;
  const [there] = await store.read(job, seq - 1, 1);
  return there?.hash === hash;
}

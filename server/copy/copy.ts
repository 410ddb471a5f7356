import { hashOf, sealedBody } from '../../src/log/chain.ts';
import type { ChainFault } from '../../src/log/fault.ts';
import type { JobId } from '../../src/model/ids.ts';
import { allReads, allStamps } from '../store/pages.ts';
import type { GivenPass, Store } from '../store/store.ts';
import { StoreFailure } from '../store/store.ts';

/** What was there afterwards; what an earlier copy that was cut off had brought is counted too. */
export interface Copied {
  readonly logs: number;
  readonly entries: number;
  /** Of these, those that were brought now. */
  readonly brought: number;
  readonly enclosures: number;
  readonly signedHeads: number;
}

const ENTRIES_AT_A_TIME = 500;
const HEADS_AT_A_TIME = 5_000;

/**
 * Copies all records of a store that nobody writes to into another, checks every hash there, and goes on where an earlier copy was
 * cut off. Join codes are not copied, for they last minutes; summaries are made again. Rejects with `StoreFailure`
 * where the other has something else under the same name, or a log is damaged: nothing is written over.
 */
export async function copyStore(from: Store, to: Store): Promise<Copied> {
  let brought = 0;
  // First in the order in which they were opened; then what has keys or pictures only.
  const logs = new Set([...(await from.jobs()).map(({ job }) => job), ...(await from.logs())]);
  for (const job of logs) {
    sound(job, await from.audit(job), 'what is copied');
    brought += await copyEntries(from, to, job);
    await copyPasses(from, to, job);
  }
  const enclosures = await copyEnclosures(from, to);
  const signedHeads = await copySignedHeads(from, to);
  await copyStamps(from, to);
  await copyReads(from, to);
  let entries = 0;
  for (const job of logs) {
    sound(job, await to.audit(job), 'the copy');
    const [head, copied] = [await from.head(job), await to.head(job)];
    if (head.hash !== copied.hash || head.count !== copied.count) throw grown(job);
    entries += copied.count;
  }
  return { logs: logs.size, entries, brought, enclosures, signedHeads };
}

function sound(job: JobId, fault: ChainFault | undefined, where: string): void {
  if (fault)
    throw new StoreFailure(`the log ${job} is damaged in ${where}, at entry ${fault.seq} (${fault.fault}).`);
}

const grown = (job: JobId): StoreFailure =>
  new StoreFailure(`the log ${job} has grown meanwhile: stop the server, and copy again.`);

const other = (what: string): StoreFailure =>
  new StoreFailure(`${what} is already there and is another one: copy to a place that is new.`);

async function copyEntries(from: Store, to: Store, job: JobId): Promise<number> {
  let brought = 0;
  const there = await to.head(job);
  if (there.count > 0) {
    const [last] = await from.read(job, there.count - 2, 1);
    if (last?.hash !== there.hash) throw other(`the log ${job}`);
  }
  for (let count = there.count; ; ) {
    const entries = await from.read(job, count - 1, ENTRIES_AT_A_TIME);
    if (entries.length === 0) return brought;
    for (const entry of entries)
      if (hashOf(sealedBody(entry)) !== entry.hash)
        throw new StoreFailure(`entry ${entry.seq} of the log ${job} would not be the same in the copy.`);
    const appended = await to.append(job, entries);
    if (appended.kind !== 'stored') throw other(`entry ${count} of the log ${job}`);
    count += entries.length;
    brought += entries.length;
  }
}

/** Those that are good no more first: taking a role's passes away takes all of them that are there. */
async function copyPasses(from: Store, to: Store, job: JobId): Promise<void> {
  const there = new Map((await to.everyPass(job)).map((pass) => [pass.token, pass.revoked]));
  const all = await from.everyPass(job);
  const missing = (revoked: GivenPass['revoked']) =>
    all.filter((pass) => pass.revoked === revoked && there.get(pass.token) !== revoked);
  for (const { token, role } of missing('seat-lost'))
    await to.append(job, [], { ...(!there.has(token) && { issue: [{ token, role }] }) });
  for (const role of new Set(missing('seat-lost').map((pass) => pass.role)))
    if (role !== 'desk') await to.append(job, [], { revoke: role });
  for (const { token, role } of missing('revoked')) {
    if (!there.has(token)) await to.append(job, [], { issue: [{ token, role }] });
    await to.append(job, [], { withdraw: token });
  }
  const issue = missing(false).map(({ token, role }) => ({ token, role }));
  if (issue.length > 0) await to.append(job, [], { issue });
}

async function copyEnclosures(from: Store, to: Store): Promise<number> {
  const enclosed = await from.enclosed();
  for (const { job, seq } of enclosed) {
    const [enclosure, there] = [await from.enclosure(job, seq), await to.enclosure(job, seq)];
    if (!enclosure) throw grown(job);
    if (!there) await to.append(job, [], {}, { put: { ...enclosure, seq } });
    else if (there.salt !== enclosure.salt || Buffer.compare(there.content, enclosure.content) !== 0)
      throw other(`what lies beside entry ${seq} of the log ${job}`);
  }
  return enclosed.length;
}

async function copySignedHeads(from: Store, to: Store): Promise<number> {
  for (let number = 0; ; ) {
    const heads = await from.signedHeads(number, HEADS_AT_A_TIME);
    const there = await to.signedHeads(number, HEADS_AT_A_TIME);
    if (there.some((head, i) => head.signature !== heads[i]?.signature))
      throw other(`a signed head after the first ${number}`);
    const missing = heads.slice(there.length);
    if (missing.length > 0) await to.addSignedHeads(missing);
    number += heads.length;
    if (heads.length < HEADS_AT_A_TIME) return number;
  }
}

/** Under numbers of their own there, in the same order; what is there already is not doubled. */
async function copyReads(from: Store, to: Store): Promise<void> {
  for await (const reads of allReads(from))
    await to.changeReads({ note: reads.map(({ number, ...read }) => read) });
}

async function copyStamps(from: Store, to: Store): Promise<void> {
  for await (const stamps of allStamps(from, (await to.lastStamp())?.size))
    for (const stamp of stamps) await to.addStamp(stamp);
}

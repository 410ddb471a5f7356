import { emptyHead, headAfter } from '../../src/log/chain.ts';
import type { Enclosure } from '../../src/log/enclosure.ts';
import type { SignedHead } from '../../src/log/signed-head.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Head, JobId, Seq } from '../../src/model/ids.ts';
import { Audit, entryOf, rowOf, type StoredEntry } from './audit.ts';
import { follows } from './follows.ts';
import { HOUR_MS, type KeptRead, LEAST_KEPT_DAYS, type Read, type ReadChange } from './reads.ts';
import {
  type Appended,
  type CodeGrant,
  type Digest,
  type Enclosing,
  type GivenPass,
  type HeldPass,
  type KeptStamp,
  type KeptSummary,
  type KeyChange,
  type LoggedHead,
  type NamedEntry,
  type Pass,
  type Store,
  StoreFailure,
} from './store.ts';

/** Keeps everything until the process ends: for tests and for trying things out. */
export class MemoryStore implements Store {
  readonly name = 'memory';
  private readonly rows = new Map<JobId, StoredEntry[]>();
  private readonly heads = new Map<JobId, Head>();
  private readonly refs = new Map<string, number>();
  private readonly held = new Map<Digest, Pass>();
  private readonly summaries = new Map<JobId, KeptSummary>();
  private readonly signed: LoggedHead[] = [];
  private readonly stamps: KeptStamp[] = [];
  private readonly beside = new Map<string, Enclosure>();
  private kept: KeptRead[] = [];
  private lastRead = 0;
  private readonly codes = new Map<Digest, CodeGrant & { expiresAt: number }>();

  /** Runs through without a pause, which makes it a transaction. */
  async append(
    job: JobId,
    entries: readonly Entry[],
    keys: KeyChange = {},
    { put, remove, forget = [] }: Enclosing = {},
  ): Promise<Appended> {
    for (const { ref } of entries) {
      const seq = ref === undefined ? undefined : this.refs.get(`${job} ${ref}`);
      if (seq !== undefined) return { kind: 'duplicate', seq };
    }
    const head = this.headNow(job);
    if (!follows(entries, head)) return { kind: 'conflict', head };
    if (keys.spend && !this.grantNow(keys.spend.code, keys.spend.now)) return { kind: 'spent' };

    const log = this.rows.get(job) ?? [];
    for (const entry of entries) {
      log.push(rowOf(entry));
      if (entry.ref !== undefined) this.refs.set(`${job} ${entry.ref}`, entry.seq);
      this.heads.set(job, headAfter(entry));
    }
    this.rows.set(job, log);
    this.turnKeys(job, keys);
    if (put) this.beside.set(`${job} ${put.seq}`, { salt: put.salt, content: put.content.slice() });
    if (remove !== undefined) this.beside.delete(`${job} ${remove}`);
    for (const seq of forget) {
      const row = log[seq];
      if (row) log[seq] = { ...row, salt: null, names: null };
    }
    if (forget.length > 0) this.summaries.delete(job);
    return { kind: 'stored' };
  }

  async named(): Promise<NamedEntry[]> {
    return [...this.rows].flatMap(([job, rows]) =>
      rows.flatMap(({ seq, names }) => (names === null ? [] : [{ job, seq, names: JSON.parse(names) }])),
    );
  }

  async enclosure(job: JobId, seq: Seq): Promise<Enclosure | undefined> {
    return this.beside.get(`${job} ${seq}`);
  }

  async enclosed(): Promise<{ job: JobId; seq: Seq }[]> {
    return [...this.beside.keys()].map((key) => {
      const [job = '', seq] = key.split(' ');
      return { job, seq: Number(seq) };
    });
  }

  private turnKeys(job: JobId, keys: KeyChange): void {
    if (keys.spend) this.codes.delete(keys.spend.code);
    for (const pass of this.held.values()) {
      if (pass.job === job && pass.role === keys.revoke && !pass.revoked) pass.revoked = 'seat-lost';
    }
    const withdrawn = keys.withdraw === undefined ? undefined : this.held.get(keys.withdraw);
    if (withdrawn?.job === job) withdrawn.revoked = 'revoked';
    for (const { token, role } of keys.issue ?? []) this.held.set(token, { job, role, revoked: false });
    const voids = keys.voids ?? keys.code?.seat;
    for (const [old, grant] of this.codes) {
      if (grant.job === job && grant.seat === voids) this.codes.delete(old);
    }
    if (keys.code) {
      const { code, seat, expiresAt } = keys.code;
      this.codes.set(code, { job, seat, expiresAt });
    }
  }

  async read(job: JobId, after: number, limit: number): Promise<Entry[]> {
    const rows = (this.rows.get(job) ?? []).slice(after + 1, after + 1 + limit);
    return rows.map(entryOf);
  }

  async head(job: JobId): Promise<Head> {
    return this.headNow(job);
  }

  private headNow(job: JobId): Head {
    return this.heads.get(job) ?? emptyHead(job);
  }

  async seqOf(job: JobId, ref: string): Promise<number | undefined> {
    return this.refs.get(`${job} ${ref}`);
  }

  async audit(job: JobId) {
    const kept = this.summaries.get(job);
    const audit = new Audit(job, [...(await this.signedHeadsOf(job)), ...(kept ? [kept] : [])]);
    for (const row of this.rows.get(job) ?? []) {
      const fault = audit.add(row);
      if (fault) return fault;
    }
    return audit.end(this.headNow(job));
  }

  async jobs(): Promise<Head[]> {
    return [...this.heads.values()];
  }

  async logs(): Promise<JobId[]> {
    const ofPasses = [...this.held.values()].map(({ job }) => job);
    const ofSigned = this.signed.map(({ job }) => job);
    const ofEnclosures = [...this.beside.keys()].map((key) => key.split(' ')[0] as JobId);
    return [
      ...new Set([...this.rows.keys(), ...ofPasses, ...ofSigned, ...ofEnclosures, ...this.summaries.keys()]),
    ];
  }

  async pass(token: Digest): Promise<Pass | undefined> {
    const pass = this.held.get(token);
    return pass && { ...pass };
  }

  async everyPass(job: JobId): Promise<GivenPass[]> {
    const held = [...this.held].filter(([, pass]) => pass.job === job);
    return held.map(([token, { role, revoked }]) => ({ token, role, revoked }));
  }

  async passes(job: JobId): Promise<HeldPass[]> {
    return [...this.held].flatMap(([token, pass]) =>
      pass.job === job && !pass.revoked ? [{ token, role: pass.role }] : [],
    );
  }

  async grant(code: Digest, now: number): Promise<CodeGrant | undefined> {
    return this.grantNow(code, now);
  }

  private grantNow(code: Digest, now: number): CodeGrant | undefined {
    const grant = this.codes.get(code);
    return grant && grant.expiresAt > now ? { job: grant.job, seat: grant.seat } : undefined;
  }

  async summary(job: JobId): Promise<KeptSummary | undefined> {
    return this.summaries.get(job);
  }

  async keepSummary(job: JobId, summary: KeptSummary): Promise<void> {
    this.summaries.set(job, { ...summary });
  }

  async addSignedHeads(heads: readonly LoggedHead[]): Promise<void> {
    this.signed.push(...heads);
  }

  async signedHeads(after: number, limit: number): Promise<LoggedHead[]> {
    return this.signed.slice(after, after + limit);
  }

  async signedHeadsOf(job: JobId): Promise<(SignedHead & { number: number })[]> {
    return this.signed.flatMap(({ job: of, ...head }, number) => (of === job ? [{ ...head, number }] : []));
  }

  async addStamp(stamp: KeptStamp): Promise<void> {
    if (stamp.size <= (this.stamps.at(-1)?.size ?? 0)) throw new StoreFailure('not of a larger tree');
    this.stamps.push({ ...stamp });
  }

  async stampOver(number: number): Promise<KeptStamp | undefined> {
    return this.stamps.find(({ size }) => size > number);
  }

  async lastStamp(): Promise<KeptStamp | undefined> {
    return this.stamps.at(-1);
  }

  async changeReads(change: ReadChange): Promise<void> {
    if ('note' in change) for (const read of change.note) this.noteRead(read);
    else if ('forget' in change) {
      const before = this.kept;
      this.kept = [];
      for (const { number, ...read } of before)
        this.noteRead(
          read.name === change.forget ? { ...read, reader: 'forgotten', name: '' } : read,
          number,
        );
    } else {
      const end = Math.min(change.end, Date.now() - LEAST_KEPT_DAYS * 24 * HOUR_MS);
      this.kept = this.kept.filter(({ hour }) => hour >= end);
    }
  }

  private noteRead(read: Read, number = this.lastRead + 1): void {
    const isSame = (one: Read) =>
      (['hour', 'log', 'what', 'key', 'reader', 'name'] as const).every(
        (field) => one[field] === read[field],
      );
    if (this.kept.some(isSame)) return;
    this.kept.push({ ...read, number });
    this.lastRead = Math.max(this.lastRead, number);
  }

  async readsAfter(after: number, limit: number): Promise<KeptRead[]> {
    return this.kept.filter(({ number }) => number > after).slice(0, limit);
  }

  async readsBefore(before: number, limit: number, log?: JobId): Promise<KeptRead[]> {
    const found = this.kept.filter((read) => read.number < before && (log === undefined || read.log === log));
    return found.reverse().slice(0, limit);
  }

  async readers(): Promise<string[]> {
    return [...new Set(this.kept.map(({ name }) => name))].filter((name) => name !== '').sort();
  }

  async health(): Promise<void> {}

  async close(): Promise<void> {}
}

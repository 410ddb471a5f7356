import { bytesToHex } from '@noble/hashes/utils.js';
import type { Logger } from 'pino';
import { headAfter } from '../../src/log/chain.ts';
import { MerkleTree, textLeaf } from '../../src/log/merkle.ts';
import {
  type Fingerprint,
  type HeadProof,
  headText,
  type PublicKey,
  type SignedHead,
  type TimeStamp,
  type TreeHead,
  treeText,
} from '../../src/log/signed-head.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Fact } from '../../src/model/facts.ts';
import type { Head, JobId } from '../../src/model/ids.ts';
import type { Clock } from '../process/clock.ts';
import type { Stamper } from '../stamps/stamper.ts';
import { checkNamed } from '../store/check.ts';
import type { LoggedHead, Store } from '../store/store.ts';
import type { SigningKey } from './ed25519.ts';

/** Sends signed heads to somewhere else. Rejects when they did not arrive; then they come again with the next. */
export type Publish = (news: Published) => Promise<void>;

export interface Published {
  /** Of the tree after these. */
  readonly tree: TreeHead;
  readonly heads: readonly LoggedHead[];
}

export interface NotaryDeps {
  store: Store;
  key: SigningKey;
  clock: Clock;
  log: Logger;
  publish: readonly Publish[];
  /** Closed with the notary. Without it, nobody else vouches for the time. */
  stamper?: Pick<Stamper, 'moved' | 'close'> | undefined;
}

/** At these the head is signed at once: an acceptance, what the panel showed in a test, a signature, a log that a phone kept alone. */
const TURNING_POINTS: ReadonlySet<Fact['type']> = new Set(['accept', 'panel', 'step', 'signed', 'brought']);

/** A log that grows is signed at least so often, ms. */
const EVERY_MS = 60_000;
const READ_BATCH = 10_000;
/** News that could not be sent; beyond it the oldest are left out, and the tree still stands for them. */
const MOST_UNSENT = 10_000;

/**
 * Signs the heads of logs as they grow, and keeps all that it signed in one tree, so that no log can be cut or written
 * again without a trace by somebody who has not the key, and not even by who has it once a head lies elsewhere.
 */
export class Notary {
  private readonly tree = new MerkleTree();
  private changed = new Map<JobId, Head>();
  /** A person has signed, and no head after it is in the tree yet. */
  private isSigning = false;
  private readonly unsent = new Map<Publish, LoggedHead[]>();
  private queue: Promise<void> = Promise.resolve();
  private readonly timer: NodeJS.Timeout;

  constructor(private readonly deps: NotaryDeps) {
    this.timer = setInterval(() => void this.sign(), EVERY_MS).unref();
    for (const publish of deps.publish) this.unsent.set(publish, []);
  }

  /** New entries of a log, which are stored. */
  seen(entries: readonly Entry[]): void {
    const last = entries.at(-1);
    if (!last) return;
    this.changed.set(last.job, headAfter(last));
    if (entries.some(({ fact }) => fact.type === 'signed')) this.isSigning = true;
    if (entries.some(({ fact }) => TURNING_POINTS.has(fact.type))) void this.sign();
  }

  /** Signs what has changed. Never rejects: what failed is signed with the next. */
  sign(): Promise<void> {
    this.queue = this.queue
      .then(() => this.signNow())
      .catch((error: unknown) => this.deps.log.error({ err: error }, 'heads could not be signed'));
    return this.queue;
  }

  /** What proves the log as it is now; a head that nobody signed yet is signed first, if the log is sound. */
  async proofOf(job: JobId): Promise<HeadProof> {
    const { store } = this.deps;
    const head = await store.head(job);
    const last = (await store.signedHeadsOf(job)).at(-1);
    const isNew = head.count > 0 && last?.hash !== head.hash && !this.changed.has(job);
    if (isNew && !(await checkNamed(store, job))) this.changed.set(job, head);
    await this.sign();
    const stamps = await this.stampsOf(job);
    return { ...(await this.provenOf(job)), ...(stamps.length > 0 && { stamps }) };
  }

  /** What was signed of a log so far. */
  async provenOf(job: JobId): Promise<HeadProof> {
    const heads = await this.deps.store.signedHeadsOf(job);
    const signed = heads.map(({ number: _, ...head }) => head);
    const index = heads.at(-1)?.number;
    if (index === undefined || index >= this.tree.size) return { signed };
    return { signed, tree: { ...this.treeHead(), index, path: this.tree.inclusion(index).map(bytesToHex) } };
  }

  /** For each signed head of a log the first time stamp that covers it, oldest first, each once: with the last head that it covers. */
  private async stampsOf(job: JobId): Promise<TimeStamp[]> {
    const { store } = this.deps;
    const stamps: TimeStamp[] = [];
    let heads = await store.signedHeadsOf(job);
    for (;;) {
      const [first] = heads;
      const kept = first && (await store.stampOver(first.number));
      // A tree that is larger than ours is of heads that the store has lost.
      if (!kept || kept.size > this.tree.size) return stamps;
      const { nonce, token, ...tree } = kept;
      const covered = heads.filter(({ number }) => number < kept.size);
      heads = heads.slice(covered.length);
      const { count, number: index } = covered.at(-1) ?? first;
      const path = this.tree.inclusion(index, kept.size).map(bytesToHex);
      stamps.push({ count, tree: { ...tree, index, path }, nonce, token });
    }
  }

  /** Of all that was signed up to now. */
  treeHead(): TreeHead {
    const { key, clock } = this.deps;
    const head = { size: this.tree.size, root: bytesToHex(this.tree.root()), at: clock.now() };
    return { ...head, key: key.public, signature: key.sign(treeText(head)) };
  }

  /** That the tree of `from` heads is the beginning of that of `size`. @throws {RangeError} */
  consistency(from: number, size: number): string[] {
    return this.tree.consistency(from, size).map(bytesToHex);
  }

  get key(): { fingerprint: Fingerprint; public: PublicKey } {
    const { fingerprint, public: key } = this.deps.key;
    return { fingerprint, public: key };
  }

  get size(): number {
    return this.tree.size;
  }

  /** The last heads are signed before the server ends. */
  async close(): Promise<void> {
    clearInterval(this.timer);
    await this.sign();
    await this.deps.stamper?.close();
  }

  /** From the store, which may hold more than we know when it failed while it wrote. */
  private async load(): Promise<void> {
    for (;;) {
      const batch = await this.deps.store.signedHeads(this.tree.size, READ_BATCH);
      for (const head of batch) this.tree.push(textLeaf(headText(head.job, head)));
      if (batch.length < READ_BATCH) return;
    }
  }

  private async signNow(): Promise<void> {
    const { store, clock } = this.deps;
    await this.load();
    const heads = [...this.changed.values()].map((head) => this.signed(head, clock.now()));
    if (heads.length > 0) {
      await store.addSignedHeads(heads);
      // What changed meanwhile stays for the next time.
      for (const { job, count } of heads) {
        if (this.changed.get(job)?.count === count) this.changed.delete(job);
      }
      await this.load();
    }
    const atOnce = this.isSigning && heads.length > 0;
    if (atOnce) this.isSigning = false;
    this.deps.stamper?.moved(this.tree.size, () => this.treeHead(), atOnce);
    await this.send(heads);
  }

  private signed({ job, count, hash }: Head, at: number): LoggedHead {
    const { key } = this.deps;
    const head: Omit<SignedHead, 'key' | 'signature'> = { count, hash, at };
    return { job, ...head, key: key.public, signature: key.sign(headText(job, head)) };
  }

  private async send(heads: readonly LoggedHead[]): Promise<void> {
    for (const [publish, waiting] of this.unsent) {
      const all = [...waiting, ...heads].slice(-MOST_UNSENT);
      if (all.length === 0) continue;
      const sent = await publish({ tree: this.treeHead(), heads: all }).then(
        () => true,
        (error: unknown) => {
          this.deps.log.error(
            { err: error },
            'signed heads could not be sent; they are sent again with the next',
          );
          return false;
        },
      );
      this.unsent.set(publish, sent ? [] : all);
    }
  }
}

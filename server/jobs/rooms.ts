import type * as z from 'zod/mini';
import type { Input } from '../../src/conversation/input.ts';
import { respond } from '../../src/conversation/respond.ts';
import { emptyHead } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Seat } from '../../src/model/facts.ts';
import type { JobId } from '../../src/model/ids.ts';
import { BAD_CODE } from '../../src/phrases/links.ts';
import type { Invite, Sitter } from '../../src/protocol/access.ts';
import type { JobBrought, JobOpened, Join, Joined, OpenJob } from '../../src/protocol/jobs.ts';
import { sittingOf } from '../../src/protocol/sitting.ts';
import type { ServerMessage } from '../../src/protocol/socket.ts';
import { EMPTY } from '../../src/visit/state.ts';
import type { Limits } from '../guard/limits.ts';
import { digest, newCode, newCodeKey, newJobId, newToken, proofOfCode } from '../guard/secrets.ts';
import type { Answer } from '../http/http.ts';
import type { KeyChange } from '../store/store.ts';
import { Asks } from './asks.ts';
import { bring, type Sent } from './bring.ts';
import { Room, type RoomDeps, sealHere } from './room.ts';

/** The live jobs: opened, joined, loaded from the log when someone comes, dropped from memory when all have left. */
export class Rooms {
  private readonly rooms = new Map<JobId, Promise<Room | undefined>>();
  private closed = false;
  readonly asks: Asks;
  /** Called when everyone has left a job. */
  onPutAway: (job: JobId) => void = () => {};
  private readonly sweeper: NodeJS.Timeout;

  constructor(
    private readonly deps: RoomDeps,
    private readonly limits: Limits,
    /** Of a server that starts again, the same: codes that it gave out are still to be scanned. */
    private readonly codeKey: Uint8Array = newCodeKey(),
  ) {
    const { store, clock } = deps;
    const { leases } = deps;
    if (leases) leases.onLost = (job) => void this.lose(job);
    this.asks = new Asks({ store, clock, limits, live: (job) => this.live(job) });
    this.sweeper = setInterval(() => this.putAway(), limits.roomIdleMs / 2).unref();
  }

  get count(): number {
    return this.rooms.size;
  }

  /** Rejects with `StoreFailure`. */
  async open({ setup, ...sitter }: z.output<typeof OpenJob>): Promise<Answer<JobOpened>> {
    const job = newJobId();
    const now = this.deps.clock.now();
    const inputs: Input[] = [
      { kind: 'open', setup },
      { kind: 'seated', seat: 'panel', ...sittingOf(job, sitter, digest), takeover: false },
    ];
    let state = EMPTY;
    let head = emptyHead(job);
    const entries: Entry[] = [];
    for (const input of inputs) {
      const response = respond(state, input, now);
      if (response.kind === 'refused') return response;
      const sealed = sealHere(head, response.drafts, now, { version: response.state.logVersion });
      state = response.state;
      head = sealed.head;
      entries.push(...sealed.entries);
    }

    const { opened, keys } = this.newKeys(job);
    await this.deps.store.append(job, entries, keys);
    this.deps.onStored?.(entries);
    this.deps.telemetry.opened('job', job);
    return { kind: 'ok', value: opened };
  }

  /** As `bring`. Rejects with `StoreFailure`. */
  bring(brought: z.output<typeof Sent>): Promise<Answer<JobBrought>> {
    return bring(this.deps, brought);
  }

  /** New keys to a job, like those of `open`, for a caller who never got its answer. Rejects with `StoreFailure`. */
  async openAgain(job: JobId): Promise<JobOpened> {
    const { opened, keys } = this.newKeys(job);
    await this.deps.store.append(job, [], keys);
    return opened;
  }

  private newKeys(job: JobId): { opened: JobOpened; keys: KeyChange } {
    const token = newToken();
    const watch = newToken();
    const { invite, code } = this.newInvite('emitter');
    const issue: KeyChange['issue'] = [
      { token: digest(token), role: 'panel' },
      { token: digest(watch), role: 'watcher' },
    ];
    return { opened: { job, seat: 'panel', token, watch, invite }, keys: { issue, code } };
  }

  /** Whether a code was scanned, and so is no guess. */
  isScanned({ code, proof }: Pick<z.output<typeof Join>, 'code' | 'proof'>): boolean {
    return proof !== undefined && digest(proof) === digest(proofOfCode(this.codeKey, code));
  }

  /** Rejects with `StoreFailure`. */
  async join(code: string, sitter: Sitter): Promise<Answer<Joined>> {
    const now = this.deps.clock.now();
    const spend = { code: digest(code), now };
    const grant = await this.deps.store.grant(spend.code, now);
    const room = grant && (await this.get(grant.job));
    if (!grant || !room) return { kind: 'refused', reason: 'bad-code', text: BAD_CODE };
    const token = newToken();
    const { job, seat } = grant;
    const issue: KeyChange['issue'] = [{ token: digest(token), role: seat }];
    const outcome = await room.seat(seat, sitter, { spend, revoke: seat, issue });
    if (outcome.kind === 'refused') return outcome;
    if (outcome.kind === 'spent') return { kind: 'refused', reason: 'bad-code', text: BAD_CODE };
    this.deps.telemetry.joined(job, seat);
    return { kind: 'ok', value: { job, seat, token } };
  }

  /** A new join code for a seat; the seat's earlier code is no longer valid. Rejects with `StoreFailure`. */
  async invite(room: Room, seat: Seat): Promise<Invite> {
    const { invite, code } = this.newInvite(seat);
    await room.changeKeys({ code });
    return invite;
  }

  private newInvite(seat: Seat): { invite: Invite; code: NonNullable<KeyChange['code']> } {
    const code = newCode();
    const expiresAt = this.deps.clock.now() + this.limits.codeLastsMs;
    return {
      invite: { seat, code, path: `/join#${code}/${proofOfCode(this.codeKey, code)}`, expiresAt },
      code: { code: digest(code), seat, expiresAt },
    };
  }

  /**
   * The room of a job that something names, loaded if needed. Undefined when the log is a site's. Rejects with `HeldElsewhere`
   * where another process has the job.
   */
  async get(job: JobId): Promise<Room | undefined> {
    if (this.closed) throw new Error('the server is stopping');
    await this.deps.leases?.take(job);
    let loading = this.rooms.get(job);
    if (!loading) {
      loading = Room.load(job, this.deps);
      this.rooms.set(job, loading);
      // After a failed load, the next caller tries again.
      const noRoom = () => {
        this.rooms.delete(job);
        void this.deps.leases?.giveUp(job);
      };
      loading.then((room) => room ?? noRoom(), noRoom);
    }
    const room = await loading;
    room?.touch();
    return room;
  }

  /** The room of a job if it is live. */
  async live(job: JobId): Promise<Room | undefined> {
    return this.rooms.get(job)?.catch(() => undefined);
  }

  async tellAll(message: ServerMessage): Promise<void> {
    for (const loading of this.rooms.values()) {
      const room = await loading.catch(() => undefined);
      room?.tell(message);
    }
  }

  /** Another process has it: its phones come again, and are carried there. */
  private async lose(job: JobId): Promise<void> {
    const room = await this.forget(job);
    await room?.close();
  }

  private forget(job: JobId): Promise<Room | undefined> {
    const room = this.live(job);
    this.rooms.delete(job);
    this.asks.forget(job);
    this.deps.rules?.forget(job);
    return room;
  }

  private async putAway(): Promise<void> {
    for (const [job, loading] of this.rooms) {
      const room = await loading.catch(() => undefined);
      if (!room?.isIdleSince(performance.now() - this.limits.roomIdleMs)) continue;
      void this.forget(job);
      await this.deps.leases?.giveUp(job);
      this.onPutAway(job);
    }
  }

  async close(): Promise<void> {
    this.closed = true;
    clearInterval(this.sweeper);
    const rooms = await Promise.all([...this.rooms.values()].map((r) => r.catch(() => undefined)));
    await Promise.all(rooms.map((room) => room?.close()));
    await this.deps.rules?.close();
    await this.deps.leases?.close();
  }
}

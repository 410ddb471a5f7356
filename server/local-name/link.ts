import { once } from 'node:events';
import { BlockList } from 'node:net';
import { setTimeout } from 'node:timers/promises';
import makeMdns from 'multicast-dns';

/** An IPv4 network of this machine: its own address there, and the mask. */
export interface Link {
  readonly address: string;
  readonly netmask: string;
}

/** `asking`: whether somebody else has it; `taken`: somebody has; `failed`: this network has no multicast for us. */
export type LinkState = 'asking' | 'held' | 'taken' | 'failed';

/** RFC 6762, section 10: of a name of a host, s. */
const TTL_S = 120;
/** Section 6.7: for who asks as if this were ordinary DNS, at most, s. */
const LEGACY_TTL_S = 10;
/** Section 8.1: three questions, this far apart, ms. */
const PROBES = 3;
const PROBE_EVERY_MS = 250;
/** Section 8.2: who loses against another that asks at the same time waits so long, ms. */
const LOST_WAIT_MS = 1000;
/** Section 8.3: said twice, a second apart. */
const ANNOUNCE_AGAIN_MS = 1000;

type Answer = makeMdns.ResponseOutgoingPacket['answers'][number];
/** Who asked, and from where. */
interface From {
  readonly address: string;
  readonly port: number;
}

export interface LinkDeps {
  readonly name: string;
  readonly link: Link;
  /** Addresses of this machine: whoever answers with one of them is no stranger. */
  readonly own: ReadonlySet<string>;
  /** What became of the name on this network. `detail`: by whom it is taken, or why it failed. */
  readonly onState: (state: LinkState, detail?: unknown) => void;
  readonly port: number;
}

/** One name on one network. It never throws. */
export class LinkName {
  state: LinkState = 'asking';
  readonly settled: Promise<void>;
  private readonly mdns: makeMdns.MulticastDNS;
  private readonly near = new BlockList();
  private readonly ending = new AbortController();
  /** Another machine asks for the same name at the same time, and comes before us. */
  private hasLost = false;

  constructor(private readonly deps: LinkDeps) {
    const { link, port } = deps;
    this.near.addSubnet(link.address, prefixOf(link.netmask), 'ipv4');
    // Bound to all, because a socket bound to one address gets no multicast; what came from another network is left out below.
    this.mdns = makeMdns({ interface: link.address, bind: '0.0.0.0', port });
    this.mdns.on('error', (err: Error) => this.fail(err));
    this.mdns.on('warning', (err: Error) => {
      // Also each packet of others that cannot be read.
      if ((err as NodeJS.ErrnoException).syscall !== undefined) this.fail(err);
    });
    this.mdns.on('response', (packet: makeMdns.FullPacket, from: From) => this.heard(packet, from));
    this.mdns.on('query', (packet: makeMdns.FullPacket, from: From) => this.asked(packet, from));
    this.settled = this.take().catch((err: unknown) => this.fail(err));
  }

  async close(): Promise<void> {
    const wasHeld = this.state === 'held';
    this.ending.abort();
    // Section 10.1.
    if (wasHeld) await this.say([this.record(0)]).catch(() => {});
    await new Promise<void>((done) => this.mdns.destroy(() => done()));
  }

  private async take(): Promise<void> {
    const { signal } = this.ending;
    await once(this.mdns, 'ready', { signal });
    for (let asked = 0; asked < PROBES && this.state === 'asking'; asked++) {
      await this.probe();
      await setTimeout(PROBE_EVERY_MS, undefined, { signal, ref: false });
      if (!this.hasLost) continue;
      this.hasLost = false;
      await setTimeout(LOST_WAIT_MS, undefined, { signal, ref: false });
      asked = -1;
    }
    if (this.state !== 'asking') return;
    this.become('held');
    await this.say([this.record()]);
    void setTimeout(ANNOUNCE_AGAIN_MS, undefined, { signal, ref: false })
      .then(() => (this.state === 'held' ? this.say([this.record()]) : undefined))
      .catch((err: unknown) => this.fail(err));
  }

  private probe(): Promise<void> {
    return new Promise((resolve, reject) =>
      this.mdns.query(
        {
          questions: [{ name: this.deps.name, type: 'ANY' as never }],
          authorities: [this.record(TTL_S, false)],
        },
        (error) => (error ? reject(error) : resolve()),
      ),
    );
  }

  private heard({ answers = [], additionals = [] }: makeMdns.FullPacket, { address }: From): void {
    if (!this.near.check(address) || (this.state !== 'asking' && this.state !== 'held')) return;
    const others = [...answers, ...additionals].filter(
      (answer) => this.isOurName(answer) && (answer as { ttl?: number }).ttl !== 0,
    );
    if (others.some((answer) => this.isStrange(answer))) this.become('taken', address);
  }

  private asked(
    { id = 0, questions = [], answers = [], authorities = [] }: makeMdns.FullPacket,
    from: From,
  ): void {
    if (!this.near.check(from.address)) return;
    if (this.state === 'asking') this.meets(authorities);
    const mine = questions.filter((question) => this.isOurName(question));
    if (this.state !== 'held' || mine.length === 0 || answers.some((answer) => this.isKnown(answer))) return;
    const isForAddress = mine.some(({ type }) => type === 'A' || (type as string) === 'ANY');
    if (from.port === this.deps.port)
      void this.say([isForAddress ? this.record() : this.nothingElse()]).catch((err: unknown) =>
        this.fail(err),
      );
    // Section 6.7: who asks from another port gets the answer of ordinary DNS.
    else
      this.mdns.respond(
        { id, questions: mine, answers: isForAddress ? [this.record(LEGACY_TTL_S, false)] : [] },
        from,
      );
  }

  /** Section 7.1: who has it for half of its time yet needs no answer. */
  private isKnown(answer: Answer): boolean {
    return (
      answer.type === 'A' &&
      this.isOurName(answer) &&
      answer.data === this.deps.link.address &&
      (answer.ttl ?? 0) >= TTL_S / 2
    );
  }

  /** Section 8.2: of two that ask at the same time the one whose address is the greater goes on. */
  private meets(authorities: readonly Answer[]): void {
    const { address } = this.deps.link;
    if (authorities.some((one) => one.type === 'A' && this.isStrange(one) && isGreater(one.data, address)))
      this.hasLost = true;
  }

  /** An address of this name that is none of ours. */
  private isStrange(answer: Answer): boolean {
    return answer.type === 'A' && this.isOurName(answer) && !this.deps.own.has(answer.data);
  }

  private isOurName({ name }: { name: string }): boolean {
    return name.toLowerCase() === this.deps.name.toLowerCase();
  }

  private record(ttl = TTL_S, flush = true): Answer {
    const { name, link } = this.deps;
    return { name, type: 'A', ttl, flush, data: link.address };
  }

  /** Section 6.1: that the name has no address of IPv6, so that nobody waits for one. */
  private nothingElse(): Answer {
    const { name } = this.deps;
    return {
      name,
      type: 'NSEC',
      ttl: TTL_S,
      flush: true,
      data: { nextDomain: name, rrtypes: ['A'] },
    } as never;
  }

  private say(answers: Answer[]): Promise<void> {
    return new Promise((resolve, reject) =>
      this.mdns.respond({ answers }, (error) => (error ? reject(error) : resolve())),
    );
  }

  private fail(err: unknown): void {
    if (this.ending.signal.aborted) return;
    this.become('failed', err);
    this.ending.abort();
  }

  private become(state: LinkState, detail?: unknown): void {
    if (this.state === state) return;
    this.state = state;
    this.deps.onState(state, detail);
  }
}

/** "255.255.255.0" is 24. */
const prefixOf = (netmask: string): number =>
  netmask
    .split('.')
    .reduce((bits, part) => bits + (Number(part) >>> 0).toString(2).replaceAll('0', '').length, 0);

const isGreater = (one: string, other: string): boolean => {
  const [a, b] = [one, other].map((address) => address.split('.').map(Number));
  const at = a?.findIndex((part, i) => part !== b?.[i]) ?? -1;
  return at >= 0 && (a?.[at] ?? 0) > (b?.[at] ?? 0);
};

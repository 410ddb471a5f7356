import { networkInterfaces } from 'node:os';
import type { Logger } from 'pino';
import { type Link, LinkName, type LinkState } from './link.ts';

/** Of all networks together: `held` where one of them has the name, `taken` where another machine has it on any. */
export type LocalNameState = LinkState | 'no-network';

const LOOK_EVERY_MS = 60_000;

/** The networks that a server which listens on `host` is reached by. Loopback only where it listens there alone. */
export function linksOf(host: string, interfaces = networkInterfaces()): Link[] {
  return Object.values(interfaces)
    .flatMap((list) => list ?? [])
    .filter(({ family }) => family === 'IPv4')
    .filter(({ address, internal }) => (host === '0.0.0.0' || host === '::' ? !internal : address === host))
    .map(({ address, netmask }) => ({ address, netmask }));
}

/**
 * Lets phones find the server by a name in `.local` (multicast DNS, RFC 6762) on every IPv4 network that it listens on. It never throws:
 * where it does not work, the server has its addresses as before, and a line of the log says why.
 */
export class LocalName {
  private readonly names = new Map<string, LinkName>();
  /** Networks whose trouble was told: it is tried again each minute, and told once. */
  private readonly told = new Set<string>();
  private readonly timer: NodeJS.Timeout;

  /** `name`: with `.local`. `port`: of multicast DNS, for tests on loopback. */
  constructor(
    readonly name: string,
    private readonly links: () => readonly Link[],
    private readonly log: Logger,
    private readonly port = 5353,
  ) {
    this.look();
    // Networks come and go.
    this.timer = setInterval(() => this.look(), LOOK_EVERY_MS).unref();
  }

  get state(): LocalNameState {
    const states = [...this.names.values()].map(({ state }) => state);
    const order: readonly LinkState[] = ['taken', 'held', 'asking', 'failed'];
    return order.find((state) => states.includes(state)) ?? 'no-network';
  }

  /** Resolves when it is known on every network whether the name is ours. */
  async settled(): Promise<void> {
    await Promise.all([...this.names.values()].map((name) => name.settled));
  }

  /** Tells the networks that the name is gone. */
  async close(): Promise<void> {
    clearInterval(this.timer);
    await Promise.all([...this.names.values()].map((name) => name.close()));
  }

  private look(): void {
    const links = this.links();
    const own = new Set(links.map(({ address }) => address));
    for (const [address, name] of this.names) {
      if (own.has(address) && name.state !== 'failed') continue;
      this.names.delete(address);
      void name.close();
    }
    for (const link of links) {
      if (!this.names.has(link.address))
        this.names.set(
          link.address,
          new LinkName({
            ...{ name: this.name, link, own, port: this.port },
            onState: (state, detail) => this.tell(link.address, state, detail),
          }),
        );
    }
  }

  private tell(address: string, state: LinkState, detail: unknown): void {
    const { name } = this;
    if (state === 'held') {
      this.told.delete(address);
      this.log.info({ name, address }, 'phones on this network find the server by its name');
      return;
    }
    const level = this.told.has(address) ? 'debug' : 'warn';
    this.told.add(address);
    if (state === 'taken') this.log[level]({ name, address, by: detail }, TAKEN);
    else this.log[level]({ name, address, err: detail }, NO_MULTICAST);
  }
}

const TAKEN =
  'another machine on this network has the local name: give this server another one with --local-name. Its addresses work as before';
const NO_MULTICAST =
  'this network takes no multicast DNS from the server: phones use its address. It is tried again';

import type { IncomingHttpHeaders } from 'node:http';
import { BlockList, isIP } from 'node:net';
import type { Carriage } from './carriage.ts';

/** Which header the proxies of a firm set. Another one is passed on as the caller sent it, so it is not read. */
export type ProxyHeader = 'x-forwarded-for' | 'forwarded';

export interface Request {
  readonly socket: { readonly remoteAddress?: string | undefined };
  readonly headers: IncomingHttpHeaders;
}

/** Where a request truly comes from. Only proxies that the owner named are believed. */
export class Callers {
  /** Where this server is several processes: what one of them carried to this one. */
  carriage: Carriage | undefined;
  private readonly trusted = new BlockList();

  /** `proxies`: addresses, or networks like `10.0.0.0/8`. Throws where one is neither. */
  constructor(
    proxies: readonly string[] = [],
    private readonly header: ProxyHeader = 'x-forwarded-for',
  ) {
    for (const proxy of proxies) {
      const [address = '', prefix] = proxy.split('/');
      const bits = isIP(address) === 6 ? 128 : 32;
      const length = prefix === undefined ? bits : Number(prefix);
      if (isIP(address) === 0 || (prefix !== undefined && !/^\d{1,3}$/.test(prefix)) || length > bits)
        throw new RangeError(`${proxy} is no address and no network.`);
      this.trusted.addSubnet(address, length, familyOf(address));
    }
  }

  isProxy(address: string | undefined): boolean {
    const plain = plainAddress(address ?? '');
    return plain !== undefined && this.trusted.check(plain, familyOf(plain));
  }

  /**
   * Each proxy writes the address that it was called from behind those before it. So they are read from the end, as
   * long as the one that wrote is a proxy of ours; what stands further left, anybody may have written.
   */
  addressOf({ socket, headers }: Request): string {
    const carried = this.carriage?.callerIn(headers);
    if (carried !== undefined) return carried;
    let address = plainAddress(socket.remoteAddress ?? '') ?? '';
    const before = this.header === 'forwarded' ? forwardedFor(headers.forwarded) : listed(headers);
    while (this.isProxy(address)) {
      const next = plainAddress(before.pop() ?? '');
      if (next === undefined) break;
      address = next;
    }
    return address;
  }
}

const familyOf = (address: string) => (isIP(address) === 6 ? 'ipv6' : 'ipv4');

const listed = ({ 'x-forwarded-for': given = '' }: IncomingHttpHeaders): string[] => String(given).split(',');

/** The `for` of each element (RFC 7239, section 4), in order. One that has none stays, empty: its proxy wrote nothing. */
function forwardedFor(header = ''): string[] {
  const quoted = String.raw`"(?:[^"\\]|\\.)*"`;
  const elements = header.match(new RegExp(`(?:${quoted}|[^,"])+`, 'g')) ?? [];
  return elements.map((element) => {
    const value = new RegExp(`(?:^|;)\\s*for\\s*=\\s*(${quoted}|[^;\\s]*)`, 'i').exec(element)?.[1] ?? '';
    return value.startsWith('"') ? value.slice(1, -1).replace(/\\(.)/g, '$1') : value;
  });
}

/** Without port, brackets, zone, or the way in which IPv4 is written as IPv6; undefined for what is no address. */
function plainAddress(text: string): string | undefined {
  const bare = /^\s*(?:\[([^\]]+)\](?::\d+)?|([\d.]+):\d+|(\S+))\s*$/.exec(text);
  const address = (bare?.[1] ?? bare?.[2] ?? bare?.[3] ?? '')
    .replace(/%.*$/, '')
    .replace(/^::ffff:(?=\d+\.)/i, '');
  return isIP(address) === 0 ? undefined : address;
}

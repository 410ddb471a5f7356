import { isIP } from 'node:net';

/** `host[:port]` of a Host header, or of a URL: a name, an IPv4 address, or an IPv6 address in brackets. */
const HOST = /^(?:\[([0-9a-f:.]+)\]|([a-z0-9._-]+))(?::\d{1,5})?$/i;

/** The name or address in a Host header, in lower case and without the dot at the end; undefined where it is neither. */
export function nameIn(host: string): string | undefined {
  const [, six, name] = HOST.exec(host) ?? [];
  if (six !== undefined) return isIP(six) === 6 ? six.toLowerCase() : undefined;
  return name?.toLowerCase().replace(/\.$/, '');
}

/** Addresses and `localhost`: names that nobody else can make lead here. */
export const isFixed = (name: string): boolean =>
  isIP(name) !== 0 || name === 'localhost' || name.endsWith('.localhost');

/**
 * Whether a request means this server. Another website can make its own name lead to our address (DNS rebinding), and
 * then its pages are of one origin with us; but it cannot change the Host that a browser sends: its name. So a name must
 * be one of ours. An address needs no name server, so nobody can rebind it.
 */
export function isKnownHost(host: string | undefined, isOurs: (name: string) => boolean): boolean {
  const name = nameIn(host ?? '');
  return name !== undefined && (isFixed(name) || isOurs(name));
}

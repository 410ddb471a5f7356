import { hostname, networkInterfaces } from 'node:os';

const ANY_HOST = new Set(['0.0.0.0', '::']);
const LOOPBACK = /^(localhost|127\.|::1$|::ffff:127\.)/;

export const isLoopback = (address: string): boolean => LOOPBACK.test(address);

/** The addresses at which other machines on the LAN reach a server that listens on `host`. */
export function lanAddresses(host: string): string[] {
  if (!ANY_HOST.has(host)) return isLoopback(host) ? [] : [host];
  return Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter((a) => !a.internal && a.family === 'IPv4')
    .map((a) => a.address)
    .sort();
}

/** What this machine is called on its network. */
export const ownNames = (): string[] => [hostname(), `${hostname()}.local`];

/** The names and addresses in the server's own certificate. `given`: names that the owner added. */
export function certificateNames(
  host: string,
  given: readonly string[] = [],
): { names: string[]; addresses: string[] } {
  return {
    names: [...new Set(['localhost', ...ownNames(), ...given])],
    addresses: ['127.0.0.1', '::1', ...lanAddresses(host)],
  };
}

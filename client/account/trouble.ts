import type { PASSKEY_TROUBLE } from '../../src/phrases/accounts.ts';

export interface Surroundings {
  /** As in the address of the page. */
  readonly hostname: string;
  /** What the browser calls a secure context: https, or this machine itself. */
  readonly isSecure: boolean;
  readonly hasPasskeys: boolean;
}

/** Why no passkey can be used on this page. Undefined: one can. */
export function passkeyTrouble({
  hostname,
  isSecure,
  hasPasskeys,
}: Surroundings): keyof typeof PASSKEY_TROUBLE | undefined {
  // IPv6 stands in brackets. A name never ends in a part that is only digits (URL Standard, 3.5).
  if (hostname.startsWith('[') || /(^|\.)\d+$/.test(hostname)) return 'address';
  if (!isSecure) return 'insecure';
  return hasPasskeys ? undefined : 'unable';
}

export const troubleHere = (): keyof typeof PASSKEY_TROUBLE | undefined =>
  passkeyTrouble({
    hostname: location.hostname,
    isSecure: isSecureContext,
    hasPasskeys: 'PublicKeyCredential' in globalThis,
  });

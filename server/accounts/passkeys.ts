import { isIP } from 'node:net';
import {
  type AuthenticatorTransport,
  verifyAuthenticationResponse,
  verifyRegistrationResponse,
} from '@simplewebauthn/server';
import type * as z from 'zod/mini';
import { type AccountId, PASSKEY_ALGORITHMS } from '../../src/model/account.ts';
import type { MadePasskey, SignIn } from '../../src/protocol/accounts.ts';
import { isFixed, nameIn } from '../guard/hosts.ts';
import type { Passkey } from '../store/account-book.ts';

/** Where passkeys are made and used: the name of the server, and the origins that its pages may have. */
export interface RelyingParty {
  readonly id: string;
  readonly origins: readonly string[];
}

/**
 * The relying party of a request, by the host that its browser named; that the name is ours is known before. Undefined
 * for an address: an RP ID is a domain (WebAuthn Level 2, 5.1.3), and an address is none. Pages have https, but on this
 * machine itself; a proxy may have added it.
 */
export function relyingPartyOf(host: string | undefined): RelyingParty | undefined {
  const id = nameIn(host ?? '');
  if (id === undefined || host === undefined || isIP(id) !== 0) return undefined;
  const secure = `https://${host.toLowerCase()}`;
  return { id, origins: isFixed(id) ? [secure, `http://${host.toLowerCase()}`] : [secure] };
}

/** Whether this challenge was given for this, and used for nothing yet. */
export type IsExpected = (challenge: string) => boolean;

/** The passkey that an authenticator has made, after its person was asked for a finger, a face or a PIN; undefined where anything is wrong. */
export async function madePasskey(
  { id, clientDataJSON, attestationObject, transports }: MadePasskey,
  party: RelyingParty,
  isExpected: IsExpected,
  now: number,
): Promise<Passkey | undefined> {
  const response = {
    id,
    rawId: id,
    type: 'public-key',
    clientExtensionResults: {},
    response: { clientDataJSON, attestationObject },
  } as const;
  const made = await verifyRegistrationResponse({
    response,
    expectedChallenge: isExpected,
    expectedOrigin: [...party.origins],
    expectedRPID: party.id,
    requireUserVerification: true,
    supportedAlgorithmIDs: PASSKEY_ALGORITHMS,
  }).catch(() => undefined);
  if (!made?.verified) return undefined;
  const { credential } = made.registrationInfo;
  return {
    id: credential.id,
    publicKey: Buffer.from(credential.publicKey).toString('base64url'),
    counter: credential.counter,
    rpId: party.id,
    ...(transports && { transports }),
    madeAt: now,
  };
}

/**
 * What the authenticator has counted, where it has proven that it holds the passkey; undefined where anything is wrong. A
 * counter that does not go up says that there may be a copy (WebAuthn Level 2, 6.1.1), and is refused.
 */
export async function provenCounter(
  { id, clientDataJSON, authenticatorData, signature, userHandle }: z.output<typeof SignIn>,
  { passkey, account }: { passkey: Passkey; account: { id: AccountId } },
  party: RelyingParty,
  isExpected: IsExpected,
): Promise<number | undefined> {
  // The name stands in both, and the handle of another account would be no proof for this one.
  if (passkey.rpId !== party.id || userHandle !== account.id) return undefined;
  const response = {
    id,
    rawId: id,
    type: 'public-key',
    clientExtensionResults: {},
    response: { clientDataJSON, authenticatorData, signature, userHandle },
  } as const;
  const { counter, transports } = passkey;
  const proven = await verifyAuthenticationResponse({
    response,
    expectedChallenge: isExpected,
    expectedOrigin: [...party.origins],
    expectedRPID: party.id,
    requireUserVerification: true,
    credential: {
      id: passkey.id,
      publicKey: new Uint8Array(Buffer.from(passkey.publicKey, 'base64url')),
      counter,
      ...(transports && { transports: transports as AuthenticatorTransport[] }),
    },
  }).catch(() => undefined);
  return proven?.verified ? proven.authenticationInfo.newCounter : undefined;
}

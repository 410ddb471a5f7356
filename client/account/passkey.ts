import type * as z from 'zod/mini';
import { PASSKEY_ALGORITHMS, PASSKEY_WITHIN_MS } from '../../src/model/account.ts';
import { PASSKEY_CANCELLED, PASSKEY_THERE } from '../../src/phrases/accounts.ts';
import type { MadePasskey, NewPasskey, SignIn, SignInChallenge } from '../../src/protocol/accounts.ts';
import { ApiError } from '../browser/requests.ts';

/** Only where somebody signs in. */
const library = () => import('@simplewebauthn/browser');

/** Fetches it before it is needed: some browsers ask for a passkey only at once after a press. */
export const prepare = (): void => void library().catch(() => undefined);

/** One that can be found without a name, and asks for a finger, a face or a PIN. @throws {ApiError} */
export async function makePasskey({ challenge, rpId, user, has }: NewPasskey): Promise<MadePasskey> {
  const { startRegistration } = await library();
  const { id, response } = await startRegistration({
    optionsJSON: {
      challenge,
      rp: { id: rpId, name: 'Ladderline' },
      user: { id: user.id, name: user.name, displayName: user.name },
      pubKeyCredParams: PASSKEY_ALGORITHMS.map((alg) => ({ alg, type: 'public-key' })),
      timeout: PASSKEY_WITHIN_MS,
      excludeCredentials: has.map((each) => ({ id: each, type: 'public-key' })),
      authenticatorSelection: {
        residentKey: 'required',
        requireResidentKey: true,
        userVerification: 'required',
      },
      attestation: 'none',
    },
  }).catch((error: Error) => {
    throw new ApiError(error.name === 'InvalidStateError' ? PASSKEY_THERE : PASSKEY_CANCELLED);
  });
  const { clientDataJSON, attestationObject, transports } = response;
  return { id, clientDataJSON, attestationObject, ...(transports && { transports: transports }) };
}

/** Whichever the person chooses. @throws {ApiError} */
export async function showPasskey({
  challenge,
  rpId,
}: z.infer<typeof SignInChallenge>): Promise<Omit<z.input<typeof SignIn>, 'device'>> {
  const { startAuthentication } = await library();
  const { id, response } = await startAuthentication({
    optionsJSON: { challenge, rpId, userVerification: 'required', timeout: PASSKEY_WITHIN_MS },
  }).catch(() => {
    throw new ApiError(PASSKEY_CANCELLED);
  });
  const { clientDataJSON, authenticatorData, signature, userHandle = '' } = response;
  return { id, clientDataJSON, authenticatorData, signature, userHandle };
}

import {
  Access,
  type Holder,
  type MadePasskey,
  NewPasskey,
  OwnAccount,
  SignedIn,
  SignInChallenge,
} from '../../src/protocol/accounts.ts';
import { Entered } from '../../src/protocol/enter.ts';
import { SsoBegun } from '../../src/protocol/sso.ts';
import { deviceName, request } from '../browser/requests.ts';
import { makePasskey, showPasskey } from './passkey.ts';

/** Who may open sites and jobs here, and whether this browser is signed in. @throws {ApiError} */
export const accessNow = (): Promise<Access> => request('/api/access', Access);

/** @throws {ApiError} */
export const leave = (everywhere: boolean): Promise<unknown> =>
  request('/api/leave', Entered, { body: { everywhere } });

/** Asks the person for a passkey; the browser keeps a cookie. @throws {ApiError} */
export async function signIn(): Promise<Holder> {
  const asked = await request('/api/account/challenge', SignInChallenge, { body: {} });
  const body = { ...(await showPasskey(asked)), device: deviceName() };
  return (await request('/api/account/sign-in', SignedIn, { body })).holder;
}

/** Where the person signs in with the account of their firm. `again`: with a new proof. @throws {ApiError} */
export const beginSso = async (again: boolean): Promise<string> =>
  (await request('/api/account/sso', SsoBegun, { body: { again } })).url;

/** Back from there, with what stood behind the "?"; the browser keeps a cookie. @throws {ApiError} */
export const finishSso = async (query: string, again: boolean): Promise<Holder> => {
  const body = { query, again, device: deviceName() };
  return (await request('/api/account/sso/finish', SignedIn, { body })).holder;
};

/** Whose invitation it is, and what is needed to make its passkey. @throws {ApiError} */
export const invited = (invitation: string): Promise<NewPasskey> =>
  request('/api/account/invited', NewPasskey, { body: { invitation } });

/** Makes the passkey of an invitation; this browser is then signed in. @throws {ApiError} */
export async function accept(invitation: string): Promise<Holder> {
  const asked = await invited(invitation);
  const passkey: MadePasskey = await makePasskey(asked);
  const body = { invitation, account: asked.user.id, passkey, device: deviceName() };
  return (await request('/api/account/accept', SignedIn, { body })).holder;
}

/** @throws {ApiError} */
export const ownAccount = (): Promise<OwnAccount> => request('/api/account', OwnAccount);

/** Makes one more passkey, for another device. @throws {ApiError} */
export async function addPasskey(): Promise<OwnAccount> {
  const asked = await request('/api/account/passkey/challenge', NewPasskey, { body: {} });
  return request('/api/account/passkey', OwnAccount, { body: { passkey: await makePasskey(asked) } });
}

/** @throws {ApiError} */
export const removePasskey = (passkey: string): Promise<OwnAccount> =>
  request('/api/account/passkey/remove', OwnAccount, { body: { passkey } });

/** @throws {ApiError} */
export const endSession = (session: string): Promise<OwnAccount> =>
  request('/api/account/session/end', OwnAccount, { body: { session } });

import type * as z from 'zod/mini';
import type { JobId, MessageId } from '../../src/model/ids.ts';
import { type Key, Keys, type WithdrawKey } from '../../src/protocol/keys.ts';
import { Logged } from '../../src/protocol/site.ts';
import { request } from '../browser/requests.ts';

/** Who has a key: with a panel's token to its job; with a desk's to its site, or to a visit of it. @throws {ApiError} */
export const keysTo = async (token: string, visit?: JobId): Promise<readonly Key[]> => {
  const path = visit === undefined ? '/api/keys' : `/api/site/keys?job=${encodeURIComponent(visit)}`;
  return (await request(path, Keys, { token })).keys;
};

type Withdrawal = Omit<z.input<typeof WithdrawKey>, 'id'>;

/** @throws {ApiError} */
export const withdrawKey = (token: string, visit: JobId | undefined, id: MessageId, body: Withdrawal) =>
  visit === undefined
    ? request('/api/keys/withdraw', Logged, { token, body: { ...body, id } })
    : request('/api/site/keys/withdraw', Logged, { token, body: { ...body, id, job: visit } });

/** 128 random bits, as the server's own tokens are. */
export function newToken(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  const text = btoa(String.fromCharCode(...bytes));
  return text.replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

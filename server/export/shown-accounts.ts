import type { Holder } from '../../src/protocol/accounts.ts';
import type { AccountBook } from '../store/account-book.ts';

/** The accounts and invitations of whom `isWanted` takes, without what proves them: nobody comes in with it. */
export function shownAccounts({ accounts, invitations }: AccountBook, isWanted: (one: Holder) => boolean) {
  return {
    accounts: accounts.filter(isWanted).map(({ id, name, role, madeAt, passkeys }) => ({
      ...{ id, name, role, madeAt },
      passkeys: passkeys.map(({ id: passkey, rpId, madeAt: made, usedAt }) => ({
        ...{ id: passkey, rpId, madeAt: made },
        ...(usedAt !== undefined && { usedAt }),
      })),
    })),
    invitations: invitations.filter(isWanted).map(({ name, role, until }) => ({ name, role, until })),
  };
}

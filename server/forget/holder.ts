import { isSameName } from '../../src/model/person.ts';
import type { Holder } from '../../src/protocol/accounts.ts';
import { type AccountBook, type Changed, withdraw } from '../store/account-book.ts';
import type { AccountsFile } from '../store/accounts.ts';

/** Who has the name in the list of accounts: an account, or an invitation, also one that is over. */
export interface FoundHolder extends Pick<Holder, 'role'> {
  readonly as: 'account' | 'invitation';
  /** Why it stays. */
  readonly kept?: string;
}

/**
 * Withdraws the accounts and invitations of a name, as `npm run account` does; where the account must stay, nothing is changed.
 * Returns what was there. Throws `StoreFailure`.
 */
export function forgetHolder(file: AccountsFile, name: string, isSure: boolean): FoundHolder[] {
  const book = file.read();
  const isNamed = (one: Holder) => isSameName(one.name, name);
  const accounts = book.accounts.filter(isNamed);
  const invitations = book.invitations.filter(isNamed);
  if (accounts.length + invitations.length === 0) return [];
  const outcome = isSure ? file.change((now) => without(now, isNamed)) : without(book, isNamed);
  const kept = outcome.kind === 'refused' ? { kept: outcome.text } : {};
  return [
    ...accounts.map(({ role }) => ({ as: 'account' as const, role, ...kept })),
    ...invitations.map(({ role }) => ({ as: 'invitation' as const, role, ...kept })),
  ];
}

function without(book: AccountBook, isNamed: (one: Holder) => boolean): Changed {
  const invitations = book.invitations.filter((one) => !isNamed(one));
  return book.accounts
    .filter(isNamed)
    .reduce<Changed>(
      (outcome, { id }) => (outcome.kind === 'refused' ? outcome : withdraw(outcome.book, id)),
      { kind: 'changed', book: { ...book, invitations } },
    );
}

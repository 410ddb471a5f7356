import type { AccountRole } from '../model/account.ts';

/** What a person reads about accounts and passkeys, where they are needed to open sites and jobs. */

export const ACCOUNT_NEEDED =
  'Whoever runs this server asks for an account before a site or a job is opened, and for a signature. Sign in with your passkey.';
export const SIGN_IN_AGAIN =
  'This was left alone for too long, or too long ago begun. Sign in again with your passkey, then try once more.';
export const NO_ACCOUNTS = 'This server has no accounts: nobody needs one here.';
export const PASSKEY_UNKNOWN =
  'This passkey opens nothing here. Its account was withdrawn, or it belongs to another server. Ask whoever runs this server for an invitation.';
export const PASSKEY_REFUSED =
  'The passkey was not taken. Try once more. If it is refused again, ask whoever runs this server to withdraw the account and to invite you anew.';
export const PASSKEY_NOT_MADE = 'The passkey could not be taken. Begin once more from the same link.';
export const INVITATION_GONE =
  'This invitation is no longer good. It works once, and for a day. Ask for a new one.';
export const LAST_PASSKEY = 'This is the only passkey of the account, and it stays. Add another one first.';
export const NO_SUCH_PASSKEY = 'There is no such passkey, or it was removed before.';
export const NO_SUCH_SESSION = 'This device is not signed in any more.';

const ROLE_MAY: Record<AccountRole, string> = {
  technician: 'may open jobs',
  supervisor: 'may open sites and jobs, and sign records',
  administrator: 'may open sites and jobs, sign records, invite and withdraw people, and see who read what',
};
export const roleMayText = (role: AccountRole): string => ROLE_MAY[role];

const ROLES: Record<AccountRole, string> = {
  technician: 'Technician',
  supervisor: 'Supervisor',
  administrator: 'Administrator',
};
export const roleText = (role: AccountRole): string => ROLES[role];

const LACKS: Record<'open-job' | 'open-site' | 'sign' | 'figures' | 'invite' | 'reads', string> = {
  'open-job': 'Your account may not open jobs. Ask an administrator.',
  'open-site': 'Your account may not open sites: a supervisor may. Ask an administrator.',
  sign: 'Your account may not sign records: a supervisor may. Ask an administrator.',
  figures: 'Your account may not see the figures over all sites: a supervisor may. Ask an administrator.',
  invite: 'Only an administrator sees and changes who has an account.',
  reads: 'Only an administrator sees who read what.',
};
export const lacksText = (right: keyof typeof LACKS): string => LACKS[right];

/** Why this browser can use no passkey here, and what to do. */
export const PASSKEY_TROUBLE = {
  address:
    'A passkey belongs to a name, and you opened this page under an address of digits. Open it under the name of the server: whoever runs it knows the name. On the server’s own machine, localhost works.',
  insecure: 'Passkeys work only over https. Open this page with https:// before the name of the server.',
  unable: 'This browser can use no passkeys. Use a newer one, or another device.',
} as const;

/** After the browser has asked for a passkey. */
export const PASSKEY_CANCELLED =
  'No passkey was given. Try again. If the browser warned of the certificate of this server, trust it first: open /trust.';
export const PASSKEY_THERE = 'This device has a passkey of this account already.';

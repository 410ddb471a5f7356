/** What administrators read, in the page and at the command line, and what stands under a signature. */

export const NO_SUCH_ACCOUNT = 'There is no such account or invitation, or it was withdrawn before.';
export const LAST_ADMINISTRATOR =
  'This is the last administrator, and stays: nobody could invite any more. Invite another one first, and wait until they have made their passkey.';
export const nameTakenText = (name: string): string =>
  `${name} has an account or an invitation here. Withdraw it first, or give another name.`;
export const NO_ADMINISTRATOR =
  'there is no administrator, and none is invited: invite one first (npm run account -- invite NAME --role administrator).';

/** The first signature under a record, where accounts are needed. */
export const FIRST_BY_ACCOUNT =
  'The first signature comes from an account of this server. Somebody without one can sign beside it.';

/** Under a signature in a record. */
export const PROVEN_NAME = 'The name is that of an account of this server, shown with a passkey.';

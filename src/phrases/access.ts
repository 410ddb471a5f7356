/** What a person reads who may not open sites and jobs yet. */

export const PASSPHRASE_NEEDED =
  'Whoever runs this server asks for a passphrase before a site or a job is opened.';
export const WRONG_PASSPHRASE = 'This is not the passphrase. Check it again.';

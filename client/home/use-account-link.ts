import { useEffect, useState } from 'preact/hooks';
import type { Access } from '../../src/protocol/accounts.ts';
import { ask } from '../browser/requests.ts';

export type AccountLink = 'sign-in' | 'account';

/**
 * What the link to the account is for; undefined where none is needed, or it is not known yet. Checked by hand, as what else the
 * first page shows: a schema library is larger than that page.
 */
export function useAccountLink(): AccountLink | undefined {
  const [link, setLink] = useState<AccountLink>();
  useEffect(() => {
    ask('/api/access')
      .then((response) => response.json())
      .then((access: unknown) => setLink(linkOf((access ?? {}) as Partial<Access>)))
      .catch(() => undefined);
  }, []);
  return link;
}

function linkOf({ kind, isIn }: Partial<Access>): AccountLink | undefined {
  if (kind !== 'accounts' && kind !== 'passphrase') return undefined;
  return kind === 'accounts' && !isIn ? 'sign-in' : 'account';
}

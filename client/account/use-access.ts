import { useEffect, useState } from 'preact/hooks';
import type { Access } from '../../src/protocol/accounts.ts';
import { accessNow } from './requests.ts';

/** Who may open sites and jobs here. Undefined until it is known; without a link it stays so. */
export function useAccess(): { access: Access | undefined; look: () => void } {
  const [access, setAccess] = useState<Access>();
  const look = () => void accessNow().then(setAccess, () => undefined);
  useEffect(look, []);
  return { access, look };
}

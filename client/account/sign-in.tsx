import { useEffect, useState } from 'preact/hooks';
import { PASSKEY_TROUBLE } from '../../src/phrases/accounts.ts';
import type { Holder } from '../../src/protocol/accounts.ts';
import { useAct } from '../browser/use-act.ts';
import { Failure } from '../ui/failure.tsx';
import { prepare } from './passkey.ts';
import { signIn } from './requests.ts';
import { troubleHere } from './trouble.ts';

/** Signs in with a passkey; or says why that cannot be done on this page. No name is typed: the passkey knows whose it is. */
export function SignIn({ onSignedIn }: { onSignedIn?: (holder: Holder) => void }) {
  const [holder, setHolder] = useState<Holder>();
  const { busy, failure, act } = useAct();
  const trouble = troubleHere();
  useEffect(prepare, []);
  if (trouble) return <p role="note">{PASSKEY_TROUBLE[trouble]}</p>;
  if (holder)
    return (
      <p role="status">
        Signed in as <strong translate={false}>{holder.name}</strong>
      </p>
    );
  const done = (signedIn: Holder) => {
    setHolder(signedIn);
    onSignedIn?.(signedIn);
  };
  return (
    <div class="choices">
      <button type="button" class="button" disabled={busy} onClick={() => act(signIn, done)}>
        Sign in with a passkey
      </button>
      <Failure text={failure?.text} />
    </div>
  );
}

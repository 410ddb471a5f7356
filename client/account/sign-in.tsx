import { useEffect, useState } from 'preact/hooks';
import { PASSKEY_TROUBLE } from '../../src/phrases/accounts.ts';
import { signInWithText } from '../../src/phrases/sso.ts';
import type { Holder } from '../../src/protocol/accounts.ts';
import { useAct } from '../browser/use-act.ts';
import { Failure } from '../ui/failure.tsx';
import { prepare } from './passkey.ts';
import { signIn } from './requests.ts';
import { leaveToSignIn } from './sso.ts';
import { troubleHere } from './trouble.ts';
import { useAccess } from './use-access.ts';

interface SignInProps {
  onSignedIn?: (holder: Holder) => void;
  /** Whoever is signed in proves once more who they are. */
  again?: boolean;
}

/**
 * Signs in with the account of the firm, where it has such, or with a passkey; or says why that cannot be done on this page. No name
 * is typed: the passkey knows whose it is.
 */
export function SignIn({ onSignedIn, again = false }: SignInProps) {
  const [holder, setHolder] = useState<Holder>();
  const { busy, failure, act } = useAct();
  const { access } = useAccess();
  const trouble = troubleHere();
  useEffect(prepare, []);
  if (!access) return <p class="hint">Loading</p>;
  const { sso } = access;
  if (trouble && sso === undefined) return <p role="note">{PASSKEY_TROUBLE[trouble]}</p>;
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
      {sso !== undefined && (
        <button
          type="button"
          class="button main"
          disabled={busy}
          onClick={() =>
            act(
              () => leaveToSignIn(again),
              () => undefined,
            )
          }
        >
          {signInWithText(sso)}
        </button>
      )}
      {!trouble && (
        <button type="button" class="button" disabled={busy} onClick={() => act(signIn, done)}>
          Sign in with a passkey
        </button>
      )}
      <Failure text={failure?.text} />
    </div>
  );
}

import { useEffect, useState } from 'preact/hooks';
import { PASSKEY_TROUBLE, roleMayText, roleText } from '../../src/phrases/accounts.ts';
import type { Holder } from '../../src/protocol/accounts.ts';
import { go, linkTo } from '../browser/route.ts';
import { useAct } from '../browser/use-act.ts';
import { Failure } from '../ui/failure.tsx';
import { Page } from '../ui/page.tsx';
import { prepare } from './passkey.ts';
import { accept, invited } from './requests.ts';
import { troubleHere } from './trouble.ts';

/** Makes the passkey that an invitation is for. */
export function InvitedPage({ secret }: { secret: string }) {
  const [whose, setWhose] = useState<Holder>();
  const { busy, failure, act } = useAct();
  const trouble = troubleHere();
  useEffect(() => {
    prepare();
    if (!trouble)
      void act(
        () => invited(secret),
        ({ user }) => setWhose(user),
      );
  }, [secret]);
  return (
    <Page>
      <section class="card">
        <h1>Your invitation</h1>
        {trouble ? (
          <p role="note">{PASSKEY_TROUBLE[trouble]}</p>
        ) : (
          whose && (
            <>
              <p>
                <strong translate={false}>{whose.name}</strong>
                <br />
                {roleText(whose.role)}: {roleMayText(whose.role)}
              </p>
              <p>
                A passkey replaces a password: this device keeps it and asks for your finger, your face or
                your PIN. Nothing is typed, and nothing can be read off your screen.
              </p>
              <p>Signatures that you give here will carry this name. If it is not yours, stop here.</p>
              <button
                type="button"
                class="button main"
                disabled={busy}
                onClick={() =>
                  act(
                    () => accept(secret),
                    () => go(linkTo('account', {})),
                  )
                }
              >
                Make the passkey
              </button>
            </>
          )
        )}
        <Failure text={failure?.text} />
      </section>
    </Page>
  );
}

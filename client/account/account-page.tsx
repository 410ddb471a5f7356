import { useEffect, useState } from 'preact/hooks';
import { hasRight } from '../../src/model/account.ts';
import { roleMayText, roleText } from '../../src/phrases/accounts.ts';
import type { OwnAccount } from '../../src/protocol/accounts.ts';
import { follow, linkTo } from '../browser/route.ts';
import { moment } from '../browser/times.ts';
import { useAct } from '../browser/use-act.ts';
import { Failure } from '../ui/failure.tsx';
import { lazy } from '../ui/lazy.tsx';
import { Page } from '../ui/page.tsx';
import { Twice } from '../ui/twice.tsx';
import { addPasskey, endSession, leave, ownAccount, removePasskey } from './requests.ts';
import { SignIn } from './sign-in.tsx';
import { useAccess } from './use-access.ts';
import './account.css';

const People = lazy(() => import('./people.tsx').then((m) => m.People));

/** Whether this device is signed in, and what one's account has: passkeys, devices, for an administrator everybody. */
export function AccountPage() {
  const { access, look } = useAccess();
  const { busy, failure, act } = useAct();
  const out = (everywhere: boolean) => act(() => leave(everywhere), look);
  return (
    <Page>
      <section class="card">
        <h1>Your account</h1>
        {!access && <p class="hint">Loading</p>}
        {access?.kind === 'open' && (
          <p>Anybody who reaches this server may open sites and jobs. Nobody signs in here.</p>
        )}
        {access?.kind === 'passphrase' && (
          <>
            <p>
              {access.isIn
                ? 'This device has shown the passphrase, and may open sites and jobs.'
                : 'This device is asked for the passphrase when it opens a site or a job.'}
            </p>
            {access.isIn && (
              <button type="button" class="button" disabled={busy} onClick={() => out(false)}>
                Sign out
              </button>
            )}
          </>
        )}
        {access?.kind === 'accounts' && !access.isIn && (
          <>
            <p>Who opens sites and jobs here, or signs, has an account. To join a job, the code is enough.</p>
            <SignIn onSignedIn={look} />
            {access.sso === undefined && (
              <p class="hint">
                No account, or a lost device? Ask whoever runs this server for an invitation.
              </p>
            )}
          </>
        )}
        {access?.holder && (
          <>
            <p>
              <strong translate={false}>{access.holder.name}</strong>
              <br />
              {roleText(access.holder.role)}: {roleMayText(access.holder.role)}
            </p>
            <div class="choices">
              {hasRight(access.holder.role, 'figures') && (
                <a class="button" href={linkTo('figures', {})} onClick={follow}>
                  All sites in figures
                </a>
              )}
              {hasRight(access.holder.role, 'reads') && (
                <a class="button" href={linkTo('reads', {})} onClick={follow}>
                  Who read what
                </a>
              )}
              <button type="button" class="button" disabled={busy} onClick={() => out(false)}>
                Sign out
              </button>
              <button type="button" class="button" disabled={busy} onClick={() => out(true)}>
                Sign out on all devices
              </button>
            </div>
          </>
        )}
        <Failure text={failure?.text} />
      </section>
      {access?.holder && <Own />}
      {access?.holder?.role === 'administrator' && <People />}
    </Page>
  );
}

/** The passkeys of the account, and the devices that are signed in. */
function Own() {
  const [own, setOwn] = useState<OwnAccount>();
  const [again, setAgain] = useState(0);
  const { busy, failure, act } = useAct();
  const change = (work: () => Promise<OwnAccount>) => act(work, setOwn);
  useEffect(() => void change(ownAccount), []);
  const isLocked = failure?.reason === 'locked';
  return (
    <section class="card">
      {own?.sso ? (
        <p>Your firm gives you this account, and says what it may do here.</p>
      ) : (
        <Passkeys of={own?.passkeys ?? []} busy={busy} change={change} />
      )}
      <Failure text={failure?.text} />
      {isLocked && (
        <SignIn
          key={again}
          again
          onSignedIn={() => void change(ownAccount).then(() => setAgain(again + 1))}
        />
      )}
      <h2>Signed in</h2>
      <ul class="holders">
        {own?.sessions.map(({ id, device, since, own: isOwn }) => (
          <li class="holder" key={id}>
            <span translate={false}>{device}</span>
            <span class="hint">
              Since <span translate={false}>{moment(since)}</span>
            </span>
            {isOwn ? (
              <span class="hint">This device</span>
            ) : (
              <button
                type="button"
                class="button"
                disabled={busy}
                onClick={() => change(() => endSession(id))}
              >
                Sign this device out
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

interface PasskeysProps {
  of: OwnAccount['passkeys'];
  busy: boolean;
  change(work: () => Promise<OwnAccount>): Promise<boolean>;
}

function Passkeys({ of, busy, change }: PasskeysProps) {
  return (
    <>
      <h2>Passkeys</h2>
      <ul class="holders">
        {of.map(({ id, madeAt, usedAt, rpId }) => (
          <li class="holder" key={id}>
            <span>
              Made <span translate={false}>{moment(madeAt)}</span>
            </span>
            {usedAt === undefined ? (
              <span class="hint">Not used since</span>
            ) : (
              <span class="hint">
                Last used <span translate={false}>{moment(usedAt)}</span>
              </span>
            )}
            {rpId !== location.hostname && (
              <span class="hint">
                Only under the name <span translate={false}>{rpId}</span>
              </span>
            )}
            {of.length > 1 && (
              <Twice
                first="Remove this passkey"
                second="Yes, remove this passkey"
                busy={busy}
                onSure={() => change(() => removePasskey(id))}
              />
            )}
          </li>
        ))}
      </ul>
      <button type="button" class="button" disabled={busy} onClick={() => change(addPasskey)}>
        Add a passkey
      </button>
      <p class="hint">For a second device. One passkey may be lost, and you still come in.</p>
    </>
  );
}

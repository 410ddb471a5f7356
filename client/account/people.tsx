import { useEffect, useState } from 'preact/hooks';
import type * as z from 'zod/mini';
import { AccountRole } from '../../src/model/account.ts';
import { roleMayText, roleText } from '../../src/phrases/accounts.ts';
import { Accounts, InvitedHolder, type WithdrawHolder } from '../../src/protocol/accounts.ts';
import { request } from '../browser/requests.ts';
import { moment } from '../browser/times.ts';
import { useAct } from '../browser/use-act.ts';
import { Failure } from '../ui/failure.tsx';
import { Choice, Field } from '../ui/field.tsx';
import { ShareLink } from '../ui/share-link.tsx';
import { Twice } from '../ui/twice.tsx';
import { SignIn } from './sign-in.tsx';

const everybody = (): Promise<Accounts> => request('/api/accounts', Accounts);
const invite = (body: { name: string; role: AccountRole }) =>
  request('/api/accounts/invite', InvitedHolder, { body });
const withdraw = (body: z.input<typeof WithdrawHolder>) =>
  request('/api/accounts/withdraw', Accounts, { body });

/** For an administrator: who has an account or an invitation; inviting and withdrawing. */
export function People() {
  const [all, setAll] = useState<Accounts>();
  const [name, setName] = useState('');
  const [role, setRole] = useState<AccountRole>('technician');
  const [made, setMade] = useState<{ name: string; path: string; until: number }>();
  const [wrong, setWrong] = useState<string>();
  const { busy, failure, act } = useAct();
  const look = () => void act(everybody, setAll);
  useEffect(look, []);

  const submit = (event: Event) => {
    event.preventDefault();
    const given = name.trim();
    setWrong(given === '' ? 'Enter a name, as it is to stand under signatures.' : undefined);
    if (given === '' || busy) return;
    void act(
      () => invite({ name: given, role }),
      ({ path, until }) => {
        setMade({ name: given, path, until });
        setName('');
        look();
      },
    );
  };

  return (
    <>
      <section class="card">
        <h2>Who has an account</h2>
        {!all && !failure && <p class="hint">Loading</p>}
        <ul class="holders">
          {all?.accounts.map(({ id, name, role, madeAt, usedAt, passkeys, sessions, own }) => (
            <li class="holder" key={id}>
              <span>
                <strong translate={false}>{name}</strong>, {roleText(role)}
              </span>
              <span class="hint">
                {passkeys === 1 ? '1 passkey' : `${passkeys} passkeys`}
                {', '}
                {usedAt === undefined ? `made ${moment(madeAt)}` : `last signed in ${moment(usedAt)}`}
                {sessions > 0 &&
                  (sessions === 1 ? ', signed in now' : `, signed in on ${sessions} devices now`)}
              </span>
              {own ? (
                <span class="hint">You</span>
              ) : (
                <Twice
                  first="Withdraw this account"
                  second={`Yes, withdraw the account of ${name}`}
                  busy={busy}
                  onSure={() => act(() => withdraw({ account: id }), setAll)}
                />
              )}
            </li>
          ))}
          {all?.invitations.map(({ id, name, role, until }) => (
            <li class="holder" key={id}>
              <span>
                <strong translate={false}>{name}</strong>, {roleText(role)}
              </span>
              <span class="hint">Invited, until {moment(until)}</span>
              <Twice
                first="Withdraw this invitation"
                second={`Yes, withdraw the invitation of ${name}`}
                busy={busy}
                onSure={() => act(() => withdraw({ invitation: id }), setAll)}
              />
            </li>
          ))}
        </ul>
        <Failure text={failure?.text} />
        {failure?.reason === 'locked' && <SignIn onSignedIn={look} again />}
      </section>
      <form class="card" onSubmit={submit} noValidate>
        <h2>Invite somebody</h2>
        <Field label="Name" value={name} error={wrong} maxLength={80} onInput={setName} />
        <Choice
          label="Role"
          value={role}
          options={AccountRole.options.map((each) => ({ value: each, label: roleText(each) }))}
          hint={roleMayText(role)}
          onInput={(each) => setRole(AccountRole.parse(each))}
        />
        <button type="submit" class="button main" disabled={busy}>
          Make an invitation
        </button>
        {made && (
          <section>
            <p role="status">
              For <strong translate={false}>{made.name}</strong> alone. It works once, until{' '}
              {moment(made.until)}. A lost device: withdraw the account, and invite anew.
            </p>
            <ShareLink label="Link of the invitation" to={made.path} />
          </section>
        )}
      </form>
    </>
  );
}

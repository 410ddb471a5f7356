import { useState } from 'preact/hooks';
import { forgettingOf } from '../../src/log/names.ts';
import type { Log } from '../../src/model/entry.ts';
import { isSameName } from '../../src/model/person.ts';
import type { Placed } from '../../src/model/placed.ts';
import { DECLARATION } from '../../src/phrases/declaration.ts';
import { personText } from '../../src/phrases/people.ts';
import { NOT_THE_NAME, SITE_NOT_READ } from '../../src/phrases/refusals.ts';
import {
  BESIDE,
  brokenSigned,
  brokenUnsignable,
  NOT_PROVEN,
  NOTHING_MISSING,
  SIGNABLE_UNPROVEN,
  signerForgotten,
  stoodText,
} from '../../src/phrases/signature.ts';
import { unsignedText } from '../../src/phrases/signoff.ts';
import type { VisitRecord } from '../../src/record/visit-record.ts';
import { SignIn } from '../account/sign-in.tsx';
import { useAccess } from '../account/use-access.ts';
import { browserStorage } from '../browser/storage.ts';
import { clock, day } from '../browser/times.ts';
import { useSend } from '../browser/use-send.ts';
import type { Picks } from '../charts/marker.tsx';
import { useAdmission } from '../people/admission.tsx';
import { NOBODY, ownPerson, personIn, rememberPerson } from '../people/saved-person.ts';
import { EntryLinks } from '../review/entry-links.tsx';
import { signRecord } from '../site/requests.ts';
import { Failure } from '../ui/failure.tsx';
import { Field } from '../ui/field.tsx';
import { DrawnSignature, SignaturePad } from './signature-pad.tsx';
import { drawnSignature, type Strokes } from './strokes.ts';
import type { AcrossSite } from './use-site-findings.ts';

type Props = {
  token: string;
  log: Log;
  record: VisitRecord;
  across: AcrossSite;
  desk: boolean;
  onAnswered: () => void;
} & Picks;

/** The valid signatures, and whether the record has changed since; or the form to sign it. */
export function SignOff({ token, log, record, across, desk, onAnswered, onPick }: Props) {
  const { state, status, fault } = record;
  const { signed, beside, changedBy } = state;
  const settled = signed !== undefined && changedBy === undefined;
  const box =
    settled && !fault ? (status === 'signed-not-proven' ? 'signed unproven' : 'signed') : 'signed changed';
  return (
    <section aria-labelledby="sign-title" class="sign-off">
      <h2 id="sign-title">Signature</h2>
      {[...(signed ? [signed] : []), ...beside].map((one, index) => (
        <div class={box} key={one.seq}>
          {fault && (
            <p role="alert">
              <strong>{brokenSigned(fault.seq)}</strong>
            </p>
          )}
          {changedBy !== undefined && (
            <p role="alert">
              <strong>Changed since it was signed</strong>, by{' '}
              <EntryLinks seqs={[changedBy]} onPick={onPick} />. The signature is for the record up to entry{' '}
              {one.head.count - 1}.
            </p>
          )}
          {settled && status === 'signed-not-proven' && (
            <p role="note">
              <strong>{NOT_PROVEN}</strong>
            </p>
          )}
          {index > 0 && <p class="note">{BESIDE}</p>}
          {one.declaration !== undefined && <p class="declaration">{one.declaration}</p>}
          <p>
            <strong>{personText(one)}</strong>, {one.role}
            <br />
            {day(one.at)}, {clock(one.at, true)} <EntryLinks seqs={[one.seq]} onPick={onPick} />
          </p>
          <Signed signed={one} entries={log.entries} />
          <p class="note">{stoodText(one)}</p>
        </div>
      ))}
      {fault ? (
        <p role="alert">{brokenUnsignable(fault.seq)}</p>
      ) : (
        <ToSign {...{ token, log, record, across, desk, onAnswered }} />
      )}
    </section>
  );
}

/** What is missing for a signature, or the form for the first or a second one. */
function ToSign({ token, log, record, across, desk, onAnswered }: Omit<Props, 'onPick'>) {
  const { missing, state, isTested } = record;
  const { signed, beside, changedBy, issues } = state;
  const form = { token, log, across, onAnswered };
  if (signed && changedBy === undefined) {
    return missing.length === 0 && desk ? <SecondSignature key={beside.length} {...form} /> : null;
  }
  if (missing.length > 0) {
    return (
      <>
        <p>{signed ? 'It cannot be signed again yet.' : 'It cannot be signed yet.'} Missing:</p>
        <ul class="missing-list">
          {missing.map((item) => {
            const text = unsignedText(item, issues);
            return <li key={text}>{text}</li>;
          })}
        </ul>
      </>
    );
  }
  return (
    <>
      <p>{isTested ? NOTHING_MISSING : SIGNABLE_UNPROVEN}</p>
      {desk ? <SignForm {...form} /> : <p>It can be signed at the desk. This link is read only.</p>}
    </>
  );
}

/** The signature as it was given, or what has become of it. */
function Signed({
  signed: { seq, signature },
  entries,
}: { signed: Placed<'signed'> } & Pick<Log, 'entries'>) {
  const forgetting = forgettingOf(entries, seq);
  if (forgetting) return <p class="note">{signerForgotten(forgetting, day(forgetting.at))}</p>;
  return signature.kind === 'drawn' ? (
    <DrawnSignature strokes={signature.strokes} />
  ) : (
    <p class="signature typed">{signature.text}</p>
  );
}

const ROLE_KEY = 'signer';

/** The role of the last person who signed on this device, so that nobody types it again for every pair. */
function lastRole(): string {
  const kept = browserStorage.read(ROLE_KEY) as { role?: unknown } | undefined;
  return typeof kept?.role === 'string' ? kept.role : '';
}

type FormProps = Pick<Props, 'token' | 'log' | 'across' | 'onAnswered'>;

/** For a witness, a client or another technician. */
function SecondSignature(props: FormProps) {
  const [wanted, setWanted] = useState(false);
  if (wanted) return <SignForm {...props} second />;
  return (
    <button type="button" class="button" onClick={() => setWanted(true)}>
      Add a second signature
    </button>
  );
}

/** `second`: of somebody else, so nothing is filled in or remembered. */
function SignForm({ token, log, across, onAnswered, second = false }: FormProps & { second?: boolean }) {
  const [who, setWho] = useState(() => (second ? NOBODY : ownPerson(browserStorage)));
  const [role, setRole] = useState(() => (second ? '' : lastRole()));
  const [drawing, setDrawing] = useState(true);
  const [strokes, setStrokes] = useState<Strokes>([]);
  const [typed, setTyped] = useState('');
  const [wrong, setWrong] = useState<string>();
  const [own, setOwn] = useState(!second);
  const { busy, failure, send } = useSend();
  const { access, look } = useAccess();
  const admission = useAdmission(look);
  // Where accounts are needed, the name is the account's; only beside another signature one may be typed.
  const hasAccounts = access?.kind === 'accounts';
  const holder = hasAccounts && own ? access.holder : undefined;
  const { job, ...head } = log.head;

  const submit = async (event: Event) => {
    event.preventDefault();
    const signature = drawing
      ? drawnSignature(strokes)
      : typed.trim() && ({ kind: 'typed', text: typed.trim() } as const);
    if (hasAccounts && own && !holder) return setWrong('Sign in first.');
    const person = personIn(holder ? { ...who, name: holder.name } : who);
    if (!person || !role.trim()) return setWrong('Enter name and role.');
    if (!signature) return setWrong(drawing ? 'Sign in the box.' : 'Type the signature.');
    if (signature.kind === 'typed' && !isSameName(signature.text, person.name)) return setWrong(NOT_THE_NAME);
    if (!across.acrossSite) return setWrong(SITE_NOT_READ);
    setWrong(undefined);
    const beside = hasAccounts && !own ? ({ beside: true } as const) : {};
    const ofSite = across.acrossSite.map(({ id }) => id);
    const body = {
      job,
      ...person,
      role: role.trim(),
      signature,
      head,
      declaration: DECLARATION,
      ofSite,
      ...beside,
    };
    const taken = await send(body, (id, signing) => admission.around(() => signRecord(token, id, signing)));
    if (taken && !second) {
      rememberPerson(browserStorage, holder ? { ...who, name: holder.name } : who);
      browserStorage.write(ROLE_KEY, { role: body.role });
    }
    // After a refusal the record may have grown: the person must see what is new before signing again.
    onAnswered();
  };
  return (
    <form class="sign-form" onSubmit={submit}>
      <p>
        You sign the {log.head.count} entries of this record as shown on this page, with the findings above.
        Later reports show as a change.
      </p>
      <p class="declaration">{DECLARATION}</p>
      {hasAccounts && second && (
        <div class="sign-kind">
          <button type="button" class="button" aria-pressed={own} onClick={() => setOwn(true)}>
            With an account
          </button>
          <button type="button" class="button" aria-pressed={!own} onClick={() => setOwn(false)}>
            Without one
          </button>
        </div>
      )}
      {hasAccounts && own ? (
        holder ? (
          <p>
            You sign as <strong translate={false}>{holder.name}</strong>: the name is that of your account.
          </p>
        ) : (
          <>
            <p>The name under a signature comes from an account of this server.</p>
            <SignIn onSignedIn={look} />
          </>
        )
      ) : (
        <Field label="Name" value={who.name} maxLength={80} onInput={(name) => setWho({ ...who, name })} />
      )}
      <Field
        label="Role"
        value={role}
        placeholder={second ? 'Witness' : 'Commissioning engineer'}
        maxLength={80}
        onInput={setRole}
      />
      <Field label="Firm" value={who.firm} maxLength={80} onInput={(firm) => setWho({ ...who, firm })} />
      <Field
        label="Competence"
        value={who.competence}
        maxLength={120}
        onInput={(competence) => setWho({ ...who, competence })}
      />
      <div class="sign-kind">
        <button type="button" class="button" aria-pressed={drawing} onClick={() => setDrawing(true)}>
          Draw
        </button>
        <button type="button" class="button" aria-pressed={!drawing} onClick={() => setDrawing(false)}>
          Type
        </button>
      </div>
      {drawing ? (
        <SignaturePad strokes={strokes} onDraw={setStrokes} />
      ) : (
        <Field label="Signature, typed" value={typed} maxLength={80} onInput={setTyped} />
      )}
      <Failure text={wrong ?? failure} />
      {admission.field}
      <button type="submit" class="button main" disabled={busy}>
        {busy ? 'Signing' : 'Sign the record'}
      </button>
    </form>
  );
}

import { useState } from 'preact/hooks';
import type { Log } from '../../src/model/entry.ts';
import type { Signature } from '../../src/model/facts.ts';
import { findingName } from '../../src/phrases/findings.ts';
import { NOTHING_MISSING, SIGNABLE_UNPROVEN } from '../../src/phrases/signature.ts';
import { unsignedText } from '../../src/phrases/signoff.ts';
import type { VisitRecord } from '../../src/record/visit-record.ts';
import { browserStorage } from '../browser/storage.ts';
import { clock, day } from '../browser/times.ts';
import type { Picks } from '../charts/marker.tsx';
import { EntryLinks } from '../review/entry-links.tsx';
import { signRecord } from '../site/requests.ts';
import { useSend } from '../site/use-send.ts';
import { Failure } from '../ui/failure.tsx';
import { Field } from '../ui/field.tsx';
import { DrawnSignature, SignaturePad } from './signature-pad.tsx';
import { drawnSignature, type Strokes } from './strokes.ts';

type Props = {
  token: string;
  log: Log;
  record: VisitRecord;
  desk: boolean;
  onAnswered: () => void;
} & Picks;

/** The valid signature, and whether the record has changed since; or the form to sign it. */
export function SignOff({ token, log, record, desk, onAnswered, onPick }: Props) {
  const { missing, state } = record;
  const { signed, changedBy, issues } = state;
  const settled = signed !== undefined && changedBy === undefined;
  return (
    <section aria-labelledby="sign-title" class="sign-off">
      <h2 id="sign-title">Signature</h2>
      {signed && (
        <div class={settled ? 'signed' : 'signed changed'}>
          {changedBy !== undefined && (
            <p role="alert">
              <strong>Changed since it was signed</strong>, by{' '}
              <EntryLinks seqs={[changedBy]} onPick={onPick} />. The signature is for the record up to entry{' '}
              {signed.head.count - 1}.
            </p>
          )}
          <p>
            <strong>{signed.name}</strong>, {signed.role}
            <br />
            {day(signed.at)}, {clock(signed.at, true)} <EntryLinks seqs={[signed.seq]} onPick={onPick} />
          </p>
          <Signed signature={signed.signature} />
          <p class="note">
            {signed.findings.length === 0
              ? 'There were no findings when it was signed.'
              : `Findings shown when it was signed: ${signed.findings.map(findingName).join(', ')}.`}
          </p>
        </div>
      )}
      {!settled && missing.length > 0 && (
        <>
          <p>{signed ? 'It cannot be signed again yet.' : 'It cannot be signed yet.'} Missing:</p>
          <ul class="missing-list">
            {missing.map((item) => {
              const text = unsignedText(item, issues);
              return <li key={text}>{text}</li>;
            })}
          </ul>
        </>
      )}
      {!settled && missing.length === 0 && <p>{record.isTested ? NOTHING_MISSING : SIGNABLE_UNPROVEN}</p>}
      {!settled && missing.length === 0 && !desk && (
        <p>It can be signed at the desk. This link is read only.</p>
      )}
      {!settled && missing.length === 0 && desk && (
        <SignForm token={token} log={log} onAnswered={onAnswered} />
      )}
    </section>
  );
}

const Signed = ({ signature }: { signature: Signature }) =>
  signature.kind === 'drawn' ? (
    <DrawnSignature strokes={signature.strokes} />
  ) : (
    <p class="signature typed">{signature.text}</p>
  );

const SIGNER_KEY = 'signer';

/** The last person who signed on this device, so that nobody types it again for every pair. */
function lastSigner(): { name: string; role: string } {
  const kept = browserStorage.read(SIGNER_KEY) as { name?: unknown; role?: unknown } | undefined;
  const text = (value: unknown): string => (typeof value === 'string' ? value : '');
  return { name: text(kept?.name), role: text(kept?.role) };
}

function SignForm({ token, log, onAnswered }: { token: string; log: Log; onAnswered: () => void }) {
  const [{ name, role }, setWho] = useState(lastSigner);
  const [drawing, setDrawing] = useState(true);
  const [strokes, setStrokes] = useState<Strokes>([]);
  const [typed, setTyped] = useState('');
  const [wrong, setWrong] = useState<string>();
  const { busy, failure, send } = useSend();
  const { job, ...head } = log.head;

  const submit = async (event: Event) => {
    event.preventDefault();
    const signature = drawing
      ? drawnSignature(strokes)
      : typed.trim() && ({ kind: 'typed', text: typed.trim() } as const);
    if (!name.trim() || !role.trim()) return setWrong('Enter name and role.');
    if (!signature) return setWrong(drawing ? 'Sign in the box.' : 'Type the signature.');
    setWrong(undefined);
    const body = { job, name: name.trim(), role: role.trim(), signature, head };
    const taken = await send(body, (id, signing) => signRecord(token, id, signing));
    if (taken) browserStorage.write(SIGNER_KEY, { name: body.name, role: body.role });
    // After a refusal the record may have grown: the person must see what is new before signing again.
    onAnswered();
  };
  return (
    <form class="sign-form" onSubmit={submit}>
      <p>
        You sign the {log.head.count} entries of this record as shown on this page, with the findings above.
        Later reports show as a change.
      </p>
      <Field label="Name" value={name} maxLength={80} onInput={(next) => setWho({ name: next, role })} />
      <Field
        label="Role"
        value={role}
        placeholder="Commissioning engineer"
        maxLength={80}
        onInput={(next) => setWho({ name, role: next })}
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
      <button type="submit" class="button main" disabled={busy}>
        {busy ? 'Signing' : 'Sign the record'}
      </button>
    </form>
  );
}

import { useState } from 'preact/hooks';
import { KEPT_HERE } from '../../src/phrases/brought.ts';
import { BRING, BRINGING, KEPT_HERE_RISK } from '../../src/phrases/kept-here.ts';
import { useAdmission } from '../people/admission.tsx';
import type { JobHere } from '../saved/jobs-here.ts';
import { Failure } from '../ui/failure.tsx';
import { bringHere } from './bring.ts';
import './here.css';

/** The way to the server for a record that only this phone has. */
export function BringButton({ kept, onBrought }: { kept: JobHere; onBrought: () => void }) {
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<string>();
  const admission = useAdmission(() => setFailure(undefined));
  const bring = async () => {
    setBusy(true);
    setFailure(undefined);
    try {
      await admission.around(() => bringHere(kept));
      onBrought();
    } catch (error) {
      setFailure((error as Error).message);
    }
    setBusy(false);
  };
  return (
    <>
      {admission.field}
      <Failure text={failure} />
      <button type="button" class="button main" disabled={busy} onClick={bring}>
        {busy ? BRINGING : BRING}
      </button>
    </>
  );
}

/** The same in the menu of the seat. */
export const KeptHere = (props: Parameters<typeof BringButton>[0]) => (
  <section class="kept-here">
    <h3>{KEPT_HERE}</h3>
    <p>{KEPT_HERE_RISK}</p>
    <BringButton {...props} />
  </section>
);

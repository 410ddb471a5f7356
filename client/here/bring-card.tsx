import { useState } from 'preact/hooks';
import { BRING, BRINGING, KEPT_HERE, KEPT_HERE_RISK } from '../../src/phrases/brought.ts';
import { useAdmission } from '../people/admission.tsx';
import { Failure } from '../ui/failure.tsx';
import { bringHere } from './bring.ts';
import type { JobHere } from './jobs-here.ts';

/** A record that only this phone has, and the way to the server for it. */
export function BringCard({ kept, onBrought }: { kept: JobHere; onBrought: () => void }) {
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
    <section class="kept-here">
      <h3>{KEPT_HERE}</h3>
      <p>{KEPT_HERE_RISK}</p>
      {admission.field}
      <Failure text={failure} />
      <button type="button" class="button main" disabled={busy} onClick={bring}>
        {busy ? BRINGING : BRING}
      </button>
    </section>
  );
}

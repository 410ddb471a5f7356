import { useState } from 'preact/hooks';
import type { AccessKind } from '../../src/protocol/accounts.ts';
import { accessNow } from '../account/requests.ts';
import { SignIn } from '../account/sign-in.tsx';
import { enter } from '../browser/job-requests.ts';
import { ApiError } from '../browser/requests.ts';
import { Field } from '../ui/field.tsx';
import { intoSight } from '../ui/into-sight.ts';

export interface Admission {
  /** Shows the passphrase where one was typed, then does `open`. Rejects as `open` does. */
  around<T>(open: () => Promise<T>): Promise<T>;
  /** In the form, above its button; nothing as long as nothing is asked for. */
  field: preact.ComponentChild;
}

/**
 * Asks for what the owner wants to see before a site or a job is opened, once the server has said that it is needed. `onIn`:
 * somebody has signed in.
 */
export function useAdmission(onIn?: () => void): Admission {
  const [needed, setNeeded] = useState<{ kind: AccessKind; time: number }>();
  const [typed, setTyped] = useState('');
  const around = async <T,>(open: () => Promise<T>): Promise<T> => {
    try {
      if (typed !== '' && needed?.kind === 'passphrase') await enter(typed);
      const opened = await open();
      setTyped('');
      return opened;
    } catch (error) {
      if (error instanceof ApiError && error.reason === 'locked') {
        const { kind } = await accessNow();
        setNeeded({ kind, time: (needed?.time ?? 0) + 1 });
      }
      throw error;
    }
  };
  const field = needed && <div ref={intoSight}>{fieldFor(needed)}</div>;
  return { around, field };

  function fieldFor({ kind, time }: { kind: AccessKind; time: number }) {
    if (kind === 'accounts') return <SignIn key={time} {...(onIn && { onSignedIn: onIn })} />;
    return (
      <Field
        label="Passphrase"
        secret
        value={typed}
        hint="Of whoever runs this server."
        maxLength={200}
        onInput={setTyped}
      />
    );
  }
}

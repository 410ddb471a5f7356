import { useState } from 'preact/hooks';
import { ApiError, enter } from '../browser/requests.ts';
import { Field } from '../ui/field.tsx';

export interface Passphrase {
  /** Shows it where the server asks for one, then does `open`. Rejects as `open` does. */
  around<T>(open: () => Promise<T>): Promise<T>;
  /** In the form, above its button; nothing while no passphrase is needed. */
  field: preact.ComponentChild;
}

/** Asks for the passphrase only once the server has said that one is needed. */
export function usePassphrase(): Passphrase {
  const [needed, setNeeded] = useState(false);
  const [typed, setTyped] = useState('');
  const around = async <T,>(open: () => Promise<T>): Promise<T> => {
    try {
      if (typed !== '') await enter(typed);
      const opened = await open();
      setTyped('');
      return opened;
    } catch (error) {
      if (error instanceof ApiError && error.reason === 'locked') setNeeded(true);
      throw error;
    }
  };
  return {
    around,
    field: needed && (
      <Field
        label="Passphrase"
        secret
        value={typed}
        hint="Of whoever runs this server."
        maxLength={200}
        onInput={setTyped}
      />
    ),
  };
}

import { useState } from 'preact/hooks';
import type { Refusal } from '../../src/model/refusal.ts';
import { requestFailedText } from '../../src/phrases/requests.ts';
import { ApiError } from './requests.ts';

export interface Acting {
  busy: boolean;
  /** Why the last try failed, in words, and as the server named it. */
  failure: { text: string; reason?: Refusal | undefined } | undefined;
  /** Tries once. True: it was done. */
  act<T>(work: () => Promise<T>, done: (value: T) => void): Promise<boolean>;
}

/** One thing at a time, with what became of it. */
export function useAct(): Acting {
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<Acting['failure']>();
  return {
    busy,
    failure,
    async act(work, done) {
      setBusy(true);
      setFailure(undefined);
      try {
        done(await work());
        return true;
      } catch (error) {
        setFailure(
          error instanceof ApiError
            ? { text: error.message, reason: error.reason }
            : { text: requestFailedText(error) },
        );
        return false;
      } finally {
        setBusy(false);
      }
    },
  };
}

import { nanoid } from 'nanoid';
import { useRef, useState } from 'preact/hooks';
import type { MessageId } from '../../src/model/ids.ts';
import { ApiError } from '../browser/requests.ts';

export interface Sending {
  busy: boolean;
  /** Why the last try was not taken, in words. */
  failure: string | undefined;
  /** Tries once; true where it was taken. */
  send<T>(body: T, call: (id: MessageId, body: T) => Promise<unknown>): Promise<boolean>;
}

/** Sends a form. The same content sent again, after the answer was lost, goes under the same id and counts once. */
export function useSend(): Sending {
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<string>();
  const last = useRef({ content: '', id: '' });
  return {
    busy,
    failure,
    async send(body, call) {
      const content = JSON.stringify(body);
      if (content !== last.current.content) last.current = { content, id: nanoid() };
      setBusy(true);
      setFailure(undefined);
      try {
        await call(last.current.id, body);
        // Taken: the same again would be meant as a second one.
        last.current = { content: '', id: '' };
        return true;
      } catch (error) {
        setFailure(error instanceof ApiError ? error.message : `It was not taken: ${error}`);
        return false;
      } finally {
        setBusy(false);
      }
    },
  };
}

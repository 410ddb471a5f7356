import { nanoid } from 'nanoid';
import { useRef, useState } from 'preact/hooks';
import type { MessageId } from '../../src/model/ids.ts';
import { requestFailedText } from '../../src/phrases/requests.ts';
import { ApiError } from './requests.ts';

export interface Sending {
  busy: boolean;
  /** Why the last try failed, in words. */
  failure: string | undefined;
  /** Tries once. True: the server accepted it. */
  send<T>(body: T, call: (id: MessageId, body: T) => Promise<unknown>): Promise<boolean>;
}

/** Sends a form. When the answer was lost, the same content is sent again under the same id, and counts once. */
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
        // Accepted: if the same is sent again, it is meant as a second one.
        last.current = { content: '', id: '' };
        return true;
      } catch (error) {
        setFailure(error instanceof ApiError ? error.message : requestFailedText(error));
        return false;
      } finally {
        setBusy(false);
      }
    },
  };
}

import { nanoid } from 'nanoid';
import { useRef } from 'preact/hooks';
import type { MessageId } from '../../src/model/ids.ts';
import { useAct } from './use-act.ts';

export interface Sending {
  busy: boolean;
  /** Why the last try failed, in words. */
  failure: string | undefined;
  /** Tries once. True: the server accepted it. */
  send<T>(body: T, call: (id: MessageId, body: T) => Promise<unknown>): Promise<boolean>;
}

/** Sends a form. When the answer was lost, the same content is sent again under the same id, and counts once. */
export function useSend(): Sending {
  const { busy, failure, act } = useAct();
  const last = useRef({ content: '', id: '' });
  return {
    busy,
    failure: failure?.text,
    send(body, call) {
      const content = JSON.stringify(body);
      if (content !== last.current.content) last.current = { content, id: nanoid() };
      const { id } = last.current;
      return act(
        () => call(id, body),
        () => {
          // Accepted: if the same is sent again, it is meant as a second one.
          last.current = { content: '', id: '' };
        },
      );
    },
  };
}

import type { HandOverFact } from '../../src/model/hand-over.ts';
import type { JobId } from '../../src/model/ids.ts';
import { useSend } from '../browser/use-send.ts';
import { writeHandOver } from '../site/requests.ts';

/** Where what the desk writes goes. */
export interface WriteTo {
  token: string;
  job: JobId;
  /** The record is to be read again. */
  onWritten: () => void;
}

/** Writes a fact of the hand-over into the log of a visit. True: the server accepted it. */
export function useWrite({ token, job, onWritten }: WriteTo) {
  const { busy, failure, send } = useSend();
  const write = async (fact: HandOverFact): Promise<boolean> => {
    const taken = await send({ job, fact }, (id, body) => writeHandOver(token, id, body));
    if (taken) onWritten();
    return taken;
  };
  return { busy, failure, write };
}

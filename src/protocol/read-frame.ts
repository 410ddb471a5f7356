import * as z from 'zod/mini';
import { MessageId } from '../model/ids.ts';
import type { Refusal } from '../model/refusal.ts';
import { badFieldText, NOT_JSON } from '../phrases/bad-requests.ts';
import { type FieldFault, incomingFaults } from './incoming.ts';
import { ClientMessage } from './socket.ts';

/** What a schema says is wrong, in English. The schemas alone have no words, for phones show none. */
export const IN_WORDS = { error: z.locales.en().localeError };

export type FrameRead =
  | { kind: 'message'; message: ClientMessage }
  /** `id`: of the message that it was meant to be, where it says one. */
  | { kind: 'bad'; reason: Refusal; text: string; id: MessageId | undefined };

/** A text frame from a phone: nothing is believed that is not a message of the protocol. */
export function readFrame(frame: string): FrameRead {
  let json: unknown;
  try {
    json = JSON.parse(frame);
  } catch {
    return { kind: 'bad', reason: 'bad-message', text: NOT_JSON, id: undefined };
  }
  const parsed = ClientMessage.safeParse(json, IN_WORDS);
  const [fault] = parsed.error?.issues ?? incomingFaults(ClientMessage, json, false);
  if (parsed.success && !fault) return { kind: 'message', message: parsed.data };
  const id = z.object({ id: MessageId }).safeParse(json).data?.id;
  const { path, message } = fault as FieldFault;
  const tooLong = parsed.error?.issues[0]?.code === 'too_big' && path.join('.') === 'text';
  return { kind: 'bad', reason: tooLong ? 'too-long' : 'bad-message', text: badFieldText(path, message), id };
}

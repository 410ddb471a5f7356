import { nanoid } from 'nanoid';
import { toPcm16 } from '../../src/audio/resample.ts';
import type { MessageId, Seq } from '../../src/model/ids.ts';
import type { Voice } from '../../src/model/voice.ts';
import type { Heard } from '../../src/speech/heard.ts';
import type { Connection, Opening } from '../link/connection.ts';
import type { OnDeviceRecogniser } from '../on-device/recogniser.ts';

/** The sound of one sentence. Mono, 16 kHz, -1 to 1. `sound` and `end`: false when it is lost. */
export interface Utterance {
  readonly id: MessageId;
  sound(samples: Float32Array): boolean;
  end(): boolean;
  drop(): void;
}

/** Sent to the server while it is spoken, with what is known of the voice. Undefined: there is no link. */
export const toServer = (
  connection: Connection,
  re: Seq | undefined,
  voice: Voice | undefined,
): Utterance | undefined =>
  sentOver(connection, { t: 'talk', id: nanoid(), ...(re !== undefined && { re }), ...(voice && { voice }) });

/** Ten digits, sent to the server while they are read. Undefined: there is no link. */
export const readToServer = (connection: Connection): Utterance | undefined =>
  sentOver(connection, { t: 'read', id: nanoid() });

function sentOver(connection: Connection, opening: Opening): Utterance | undefined {
  const talk = connection.talk(opening);
  return talk && { ...talk, sound: (samples) => talk.sound(toPcm16(samples) as Int16Array<ArrayBuffer>) };
}

/** Turned into words on this phone. `done` gets them, or undefined if there were none or the model failed. */
export function toOnDevice(
  recogniser: OnDeviceRecogniser,
  voice: Voice | undefined,
  done: (id: MessageId, heard: Heard | undefined) => void,
): Utterance {
  const id = nanoid();
  const parts: Float32Array[] = [];
  return {
    id,
    sound: (samples) => parts.push(samples) > 0,
    end() {
      recogniser.hear(joined(parts), voice).then(
        (heard) => done(id, heard.text === '' ? undefined : heard),
        () => done(id, undefined),
      );
      return true;
    },
    drop() {},
  };
}

export function joined(parts: readonly Float32Array[]): Float32Array {
  const whole = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

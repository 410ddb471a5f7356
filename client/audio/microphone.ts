import { MICROPHONE_INSECURE, MICROPHONE_SILENT, microphoneFaultText } from '../../src/phrases/talk.ts';
import captureUrl from './capture.worklet.ts?worker&url';

/** Why there is no sound from the microphone, in words that say what to do. */
export class MicrophoneError extends Error {
  override name = 'MicrophoneError';
}

export interface Microphone {
  /** Samples per second for `onBlock`: the phone's own rate. */
  readonly rate: number;
  /** The browser changes the loudness by itself, whatever was asked for. */
  readonly changesLoudness: boolean;
  close(): void;
}

/** If a block is this late, the audio clock is frozen, for example after a call or a locked screen. */
const FIRST_BLOCK_MS = 1_500;

/**
 * Opens the microphone at the phone's own rate. If the audio clock is frozen, no sound comes, and everything is
 * opened once more.
 * @throws {MicrophoneError}
 */
export async function openMicrophone(
  onBlock: (samples: Float32Array) => void,
  as: 'speech' | 'sound' = 'speech',
): Promise<Microphone> {
  const stream = await ask(as === 'speech');
  try {
    const first = await listen(stream, onBlock);
    return first ?? (await listen(stream, onBlock)) ?? fail(MICROPHONE_SILENT);
  } catch (error) {
    stop(stream);
    throw error instanceof MicrophoneError ? error : new MicrophoneError(MICROPHONE_SILENT);
  }
}

/** `improved`: as it is best for speech, which takes away tones and evens out how loud they are. */
async function ask(improved: boolean): Promise<MediaStream> {
  if (!globalThis.isSecureContext || !navigator.mediaDevices) fail(MICROPHONE_INSECURE);
  setSession('play-and-record');
  try {
    return await navigator.mediaDevices.getUserMedia({
      audio: {
        channelCount: 1,
        echoCancellation: improved,
        noiseSuppression: improved,
        autoGainControl: improved,
      },
    });
  } catch (error) {
    return fail(microphoneFaultText(error as DOMException));
  }
}

/** One try. Undefined: no sound came. */
async function listen(
  stream: MediaStream,
  onBlock: (samples: Float32Array) => void,
): Promise<Microphone | undefined> {
  const context = new AudioContext();
  await context.audioWorklet.addModule(captureUrl);
  const source = context.createMediaStreamSource(stream);
  const capture = new AudioWorkletNode(context, 'capture', { numberOfOutputs: 0 });
  source.connect(capture);
  await Promise.race([context.resume(), pause(FIRST_BLOCK_MS)]);
  const alive = await new Promise<boolean>((resolve) => {
    const timer = setTimeout(() => resolve(false), FIRST_BLOCK_MS);
    capture.port.onmessage = ({ data }) => {
      clearTimeout(timer);
      resolve(true);
      onBlock(data as Float32Array);
    };
  });
  if (!alive) {
    void context.close();
    return undefined;
  }
  return {
    rate: context.sampleRate,
    changesLoudness: stream.getAudioTracks().some((track) => track.getSettings().autoGainControl === true),
    close() {
      capture.port.onmessage = null;
      stop(stream);
      void context.close();
      setSession('auto');
    },
  };
}

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

function stop(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}

function fail(text: string): never {
  throw new MicrophoneError(text);
}

/** Safari 16.4 and later: uses the loudspeaker while the microphone is closed. */
function setSession(type: 'auto' | 'play-and-record'): void {
  const { audioSession } = navigator as Navigator & { audioSession?: { type: string } };
  if (audioSession) audioSession.type = type;
}

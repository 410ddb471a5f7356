/** Speech made on the server, for phones whose browser has no voice. */
export interface VoiceMaker {
  /** A mono WAV. `rate`: 1 is the usual pace. Rejects with `VoiceUnavailable`. */
  say(text: string, rate: number): Promise<Uint8Array<ArrayBuffer>>;
  close(): Promise<void>;
}

/** No speech could be made; the words stand on the screen. */
export class VoiceUnavailable extends Error {
  override name = 'VoiceUnavailable';
}

/** Longer than anything the crew is told. */
export const LONGEST_TEXT = 400;
export const SLOWEST = 0.7;
export const FASTEST = 1.6;

/** Letters, figures and plain punctuation, beginning with a word: the synthesiser takes a leading hyphen for an option. */
export const sayable = (text: string): string =>
  text
    .normalize('NFKC')
    .replace(/[’‘]/g, "'")
    .replace(/[^\p{L}\p{N}.,;:!?'%/()-]+/gu, ' ')
    .replace(/^[^\p{L}\p{N}]+/u, '')
    .trim();

import type { MessageId, Seq } from '../../src/model/ids.ts';
import type { Voice } from '../../src/model/voice.ts';

/** What comes with the sound: the instruction on the screen, and what is known of the voice; or that it is a reading of ten digits. */
export type Purpose = { re?: Seq | undefined; voice?: Voice | undefined } | 'reading';

/** The sound of one utterance, while it arrives. */
export class Talk {
  private readonly parts: Buffer[] = [];
  private length = 0;

  constructor(
    readonly id: MessageId,
    readonly purpose: Purpose,
    private readonly maxBytes: number,
  ) {}

  /** False when the utterance would get too long; then this part is not kept. */
  add(part: Buffer): boolean {
    if (this.length + part.length > this.maxBytes) return false;
    this.parts.push(part);
    this.length += part.length;
    return true;
  }

  get pcm(): Buffer {
    return Buffer.concat(this.parts);
  }
}

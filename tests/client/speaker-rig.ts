import {
  type Announcement,
  newSpeaker,
  type Speaker,
  type SpeakerEffect,
  type SpeakerEvent,
  speak,
} from '../../client/speak/speaker.ts';

/** A voice on a clock that only moves when told to, after the first touch. */
export class SpeakerRig {
  speaker: Speaker = newSpeaker(false);
  now = 0;
  effects: SpeakerEffect[] = [];

  constructor() {
    this.do({ on: 'unlock' });
  }
  do(event: SpeakerEvent): this {
    const { speaker, effects } = speak(this.speaker, event, this.now);
    this.speaker = speaker;
    this.effects = effects;
    return this;
  }
  say(seq: number, kind: Announcement['kind'], text: string, more: Partial<Announcement> = {}): this {
    return this.do({ on: 'say', announcement: { seq, kind, text, until: this.now + 60_000, ...more } });
  }
  pass(ms: number): this {
    this.now += ms;
    return this.do({ on: 'tick' });
  }
  get spoke(): string[] {
    return this.effects.flatMap((e) => (e.do === 'speak' ? [e.text] : []));
  }
}

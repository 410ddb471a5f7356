import { useEffect, useRef, useState } from 'preact/hooks';
import { isSame } from '../../src/formats/same.ts';
import type { Seat } from '../../src/model/facts.ts';
import type { Seq } from '../../src/model/ids.ts';
import type { Placed } from '../../src/model/placed.ts';
import { VOICE_TEST } from '../../src/phrases/talk-ahead.ts';
import { aloud } from '../language/aloud.ts';
import type { Link } from '../link/link.ts';
import type { Cue } from './cues.ts';
import { type Around, linesSince, NOTHING_FOLLOWED } from './script.ts';
import { serverVoice } from './server-voice.ts';
import { soundOut } from './sound-out.ts';
import { type By, isHeard, newSpeaker, type Speaker, type SpeakerEvent, speak } from './speaker.ts';
import {
  hasVoice,
  loadVoice,
  phoneVoice,
  saveVoice,
  signal,
  type Voice,
  type VoiceSettings,
} from './voice.ts';

export interface SpeakerView {
  settings: VoiceSettings;
  change(settings: VoiceSettings): void;
  /** False until a first touch has allowed the page to make sound. */
  unlocked: boolean;
  /** No voice worked: the person has to read. */
  silent: boolean;
  /** A sound of this phone is playing now. */
  speaking: boolean;
  /** The last instruction that was spoken to its end. */
  said: Seq | -1;
  /** Says a sentence, to try the voice. */
  test(): void;
  /** Is silent for a moment, so that somebody can speak. */
  hush(): void;
  /** Says this after a signal; `loud`: the signal as loud as the phone can, whatever is set. */
  say(text: string, cue: Cue, loud: boolean): void;
}

const TICK_MS = 100;
/** Time to begin to speak. Common practice, no source. */
const HUSH_MS = 4_000;
/** What this phone has to say by itself is out of date after that. */
const SAID_WITHIN_MS = 10_000;

/** Speaks what comes over a live link. `current`: the instruction that is valid now; `mounting`: how the emitter hangs; `alone`: how one person works alone. */
export function useSpeaker(
  link: Link,
  current: Placed<'instruction'> | undefined,
  seat: Seat,
  microphoneOpen: boolean,
  { mounting, alone }: Pick<Around, 'mounting' | 'alone'>,
): SpeakerView {
  const [settings, setSettings] = useState(loadVoice);
  const [flags, setFlags] = useState<Flags>({ unlocked: false, silent: false, speaking: false, said: -1 });
  const runner = useRef<Runner>(undefined);
  runner.current ??= new Runner(settings, link.token, setFlags);
  const run = runner.current;
  run.settings = settings;
  run.microphoneOpen = microphoneOpen;

  const { phase, entries, conn } = link;
  useEffect(() => run.follow(link, { current, mounting, alone }, seat), [phase, entries, conn]);
  useEffect(() => run.feed({ on: 'microphone', open: microphoneOpen }), [microphoneOpen]);
  useEffect(() => run.feed({ on: 'mute', muted: settings.muted }), [settings.muted]);
  useEffect(() => {
    const timer = setInterval(() => run.feed({ on: 'tick' }), TICK_MS);
    const unlock = () => run.unlock();
    // On iOS the end of a touch gives the permission, not its beginning.
    const touches = ['pointerup', 'keydown', 'click'];
    for (const touch of touches) addEventListener(touch, unlock, true);
    return () => {
      clearInterval(timer);
      for (const touch of touches) removeEventListener(touch, unlock, true);
      run.feed({ on: 'forget' });
    };
  }, []);

  return {
    settings,
    change(next) {
      saveVoice(next);
      setSettings(next);
    },
    ...flags,
    test: () => run.test(),
    hush: () => run.hush(),
    say: (text, cue, loud) => run.say(text, cue, loud),
  };
}

type Flags = Pick<SpeakerView, 'unlocked' | 'silent' | 'speaking' | 'said'>;

const flagsOf = (speaker: Speaker): Flags => ({
  unlocked: speaker.unlocked,
  silent: speaker.silent,
  speaking: isHeard(speaker),
  said: speaker.said,
});

/** Runs a `Speaker` on the two voices. */
class Runner {
  #speaker: Speaker;
  readonly #out = soundOut();
  readonly #voices: Readonly<Record<By, Voice>>;
  #followed = NOTHING_FOLLOWED;
  #hushed: ReturnType<typeof setTimeout> | undefined;
  microphoneOpen = false;

  constructor(
    public settings: VoiceSettings,
    token: string,
    private readonly show: (flags: Flags) => void,
  ) {
    this.#voices = { phone: phoneVoice(), server: serverVoice(token, this.#out) };
    this.#speaker = newSpeaker(settings.muted, hasVoice() ? 'phone' : 'server');
  }

  /** Whoever begins to speak meanwhile opens the microphone, and this phone stays silent until they end. */
  hush(): void {
    this.feed({ on: 'microphone', open: true });
    clearTimeout(this.#hushed);
    this.#hushed = setTimeout(() => {
      if (!this.microphoneOpen) this.feed({ on: 'microphone', open: false });
    }, HUSH_MS);
  }

  feed(event: SpeakerEvent): void {
    const before = this.#speaker;
    const { speaker, effects } = speak(before, event, Date.now());
    this.#speaker = speaker;
    for (const effect of effects) {
      if (effect.do === 'cut') for (const voice of this.#all) voice.cut();
      if (effect.do === 'cue') signal(effect.cue, this.settings, this.#out);
      if (effect.do === 'speak') {
        this.#voices[effect.by].speak(effect.text, this.settings, {
          began: () => this.feed({ on: 'began' }),
          ended: () => this.feed({ on: 'ended' }),
          failed: () => this.feed({ on: 'failed' }),
        });
      }
    }
    const [was, is] = [flagsOf(before), flagsOf(this.#speaker)];
    if (!isSame(was, is)) this.show(is);
  }

  get #all(): readonly Voice[] {
    return Object.values(this.#voices);
  }

  /** Speaks what is new, without the history. */
  follow(
    link: Link,
    job: { current: Placed<'instruction'> | undefined } & Pick<Around, 'mounting' | 'alone'>,
    seat: Seat,
  ): void {
    const saidUpTo = this.#speaker.said;
    const { followed, events } = linesSince(this.#followed, link, { ...job, saidUpTo }, seat, Date.now());
    this.#followed = followed;
    for (const event of events) this.feed(event);
  }

  unlock(): void {
    if (this.#speaker.unlocked) return;
    for (const voice of this.#all) voice.unlock();
    this.feed({ on: 'unlock' });
  }

  say(text: string, cue: Cue, loud: boolean): void {
    const settings = loud ? { ...this.settings, muted: false, volume: 1, vibrates: true } : this.settings;
    signal(cue, settings, this.#out);
    const until = Date.now() + SAID_WITHIN_MS;
    const seq = this.#followed.upTo;
    this.feed({ on: 'say', announcement: { seq, kind: 'notice', text: aloud(text), until } });
  }

  test(): void {
    this.feed({
      on: 'say',
      announcement: {
        seq: this.#followed.upTo,
        kind: 'notice',
        text: VOICE_TEST,
        until: Date.now() + 5_000,
      },
    });
  }
}

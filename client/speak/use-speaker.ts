import { useEffect, useRef, useState } from 'preact/hooks';
import type { Seat } from '../../src/facts.ts';
import type { Placed } from '../../src/job/state.ts';
import type { Link } from '../link/link.ts';
import { lineFor, lineOnReturn } from './script.ts';
import { newSpeaker, type Speaker, type SpeakerEvent, speak } from './speaker.ts';
import { browserVoice, loadVoice, saveVoice, type Voice, type VoiceSettings } from './voice.ts';

export interface SpeakerView {
  settings: VoiceSettings;
  change(settings: VoiceSettings): void;
  /** False until a first touch has let the page make sound. */
  unlocked: boolean;
  /** The voice did not speak when it was asked: the person has to read. */
  silent: boolean;
  /** Says something again that stands on the screen. */
  test(): void;
}

const TICK_MS = 100;

/** Speaks what comes over a live link; `current`: the instruction that holds now. */
export function useSpeaker(
  link: Link,
  current: Placed<'instruction'> | undefined,
  seat: Seat,
  microphoneOpen: boolean,
): SpeakerView {
  const [settings, setSettings] = useState(loadVoice);
  const [flags, setFlags] = useState({ unlocked: false, silent: false });
  const runner = useRef<Runner>(undefined);
  runner.current ??= new Runner(settings, setFlags);
  const run = runner.current;
  run.settings = settings;

  const { phase, entries, conn } = link;
  useEffect(() => {
    if (phase === 'live') run.follow(link, current, seat);
    else run.feed({ on: 'forget' });
  }, [phase, entries, conn]);
  useEffect(() => run.feed({ on: 'microphone', open: microphoneOpen }), [microphoneOpen]);
  useEffect(() => run.feed({ on: 'mute', muted: settings.muted }), [settings.muted]);
  useEffect(() => {
    const timer = setInterval(() => run.feed({ on: 'tick' }), TICK_MS);
    const unlock = () => run.unlock();
    // iOS takes the end of a touch for a permission, not its beginning.
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
  };
}

/** Runs a `Speaker` on the phone's voice. */
class Runner {
  #speaker: Speaker;
  readonly #voice: Voice = browserVoice();
  /** The last entry that was given to the speaker or left out for good. */
  #fed = -1;
  /** The socket whose history has been passed over. */
  #conn = 0;

  constructor(
    public settings: VoiceSettings,
    private readonly show: (flags: { unlocked: boolean; silent: boolean }) => void,
  ) {
    this.#speaker = newSpeaker(settings.muted);
  }

  feed(event: SpeakerEvent): void {
    const before = this.#speaker;
    const { speaker, effects } = speak(before, event, Date.now());
    this.#speaker = speaker;
    for (const effect of effects) {
      if (effect.do === 'cut') this.#voice.cut();
      if (effect.do === 'cue') this.#voice.cue(effect.cue, this.settings);
      if (effect.do === 'speak') {
        this.#voice.speak(effect.text, this.settings, {
          began: () => this.feed({ on: 'began' }),
          ended: () => this.feed({ on: 'ended' }),
        });
      }
    }
    const { unlocked, silent } = speaker;
    if (unlocked !== before.unlocked || silent !== before.silent) this.show({ unlocked, silent });
  }

  /** Takes up what has come since, leaving history out. */
  follow(
    { conn, entries, historyEnd, offset = 0 }: Link,
    current: Placed<'instruction'> | undefined,
    seat: Seat,
  ): void {
    const clock = { now: Date.now(), offset };
    if (conn !== this.#conn) {
      this.#conn = conn;
      for (const event of lineOnReturn(current, this.#speaker.said, seat, clock)) this.feed(event);
      this.#fed = Math.max(this.#fed, historyEnd);
    }
    for (const entry of entries.slice(this.#fed + 1)) {
      for (const event of lineFor(entry, seat, clock)) this.feed(event);
    }
    this.#fed = entries.length - 1;
  }

  unlock(): void {
    if (this.#speaker.unlocked) return;
    this.#voice.unlock();
    this.feed({ on: 'unlock' });
  }

  test(): void {
    this.feed({
      on: 'say',
      utterance: { seq: this.#fed, kind: 'notice', text: 'This is how I speak.', until: Date.now() + 5_000 },
    });
  }
}

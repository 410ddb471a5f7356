import { browserStorage } from '../browser/storage.ts';
import { languageAloud } from '../language/aloud.ts';
import { type Beep, CUES, type Cue } from './cues.ts';
import type { SoundOut } from './sound-out.ts';

export interface VoiceSettings {
  muted: boolean;
  /** 1 is the normal speed of the voice. */
  rate: number;
  /** 0 to 1. */
  volume: number;
  /** The phone also vibrates, where it can. */
  vibrates: boolean;
}

const KEY = 'voice';
export const DEFAULT_VOICE: VoiceSettings = { muted: false, rate: 1, volume: 1, vibrates: true };

export function loadVoice(): VoiceSettings {
  const kept = browserStorage.read(KEY) as Partial<VoiceSettings> | undefined;
  return {
    muted: kept?.muted === true,
    rate: within(kept?.rate, 0.7, 1.6),
    volume: within(kept?.volume, 0.1, 1),
    vibrates: kept?.vibrates !== false,
  };
}

export const saveVoice = (settings: VoiceSettings): void => void browserStorage.write(KEY, settings);

const within = (x: unknown, low: number, high: number): number =>
  typeof x === 'number' ? Math.min(high, Math.max(low, x)) : 1;

export interface VoiceCalls {
  began(): void;
  ended(): void;
  /** It will not be heard. Not every voice notices this. */
  failed(): void;
}

/** A voice, the phone's own or another. */
export interface Voice {
  /** Must be called once during a tap, or iOS keeps the page silent. */
  unlock(): void;
  speak(text: string, settings: VoiceSettings, on: VoiceCalls): void;
  cut(): void;
}

/** Whether this browser says that it can speak. Some say so and stay silent. */
export const hasVoice = (): boolean => globalThis.speechSynthesis !== undefined;

export function phoneVoice(): Voice {
  const synthesis: SpeechSynthesis | undefined = globalThis.speechSynthesis;
  /** Held here, because some browsers do not report the end of an utterance that nothing holds. */
  let current: SpeechSynthesisUtterance | undefined;

  return {
    unlock() {
      if (!synthesis || synthesis.speaking) return;
      const empty = new SpeechSynthesisUtterance(' ');
      empty.volume = 0;
      synthesis.speak(empty);
    },
    speak(text, { rate, volume }, { began, ended, failed }) {
      if (!synthesis) return failed();
      const utterance = new SpeechSynthesisUtterance(text);
      const language = languageAloud(text);
      const voice = voiceFor(language, synthesis.getVoices());
      if (voice) utterance.voice = voice;
      utterance.lang = voice?.lang ?? language;
      utterance.rate = rate;
      utterance.volume = volume;
      const mine = (call: () => void) => () => {
        if (current === utterance) call();
      };
      utterance.onstart = mine(began);
      utterance.onend = mine(ended);
      current = utterance;
      synthesis.speak(utterance);
    },
    cut() {
      current = undefined;
      synthesis?.cancel();
    },
  };
}

/** A voice of the phone itself comes first: one from the network is silent in a hall without a network. */
export function voiceFor<V extends Pick<SpeechSynthesisVoice, 'lang' | 'localService' | 'default'>>(
  language: string,
  voices: readonly V[],
): V | undefined {
  const spoken = voices.filter((v) => v.lang.toLowerCase().startsWith(language.slice(0, 2)));
  return spoken.find((v) => v.localService && v.default) ?? spoken.find((v) => v.localService) ?? spoken[0];
}

/** Whether this browser can make its phone vibrate. */
export const canVibrate = (): boolean => navigator.vibrate !== undefined;

/** The sound and the vibration before words. A muted phone vibrates too. */
export function signal(cue: Cue, { volume, muted, vibrates }: VoiceSettings, out: SoundOut): void {
  const { beeps, buzz } = CUES[cue];
  if (vibrates) navigator.vibrate?.([...buzz]);
  const context = muted ? undefined : out.context();
  if (context) for (const beep of beeps) sound(context, beep, volume);
}

const EDGE_S = 0.012;
const LOUDNESS = 0.35;

function sound(context: AudioContext, beep: Beep, volume: number): void {
  const from = context.currentTime + beep.at / 1000;
  const to = from + beep.for / 1000;
  const tone = new OscillatorNode(context, { type: beep.timbre, frequency: beep.hz });
  const gain = new GainNode(context, { gain: 0 });
  gain.gain.setValueAtTime(0, from);
  gain.gain.linearRampToValueAtTime(LOUDNESS * volume, from + EDGE_S);
  gain.gain.setValueAtTime(LOUDNESS * volume, to - EDGE_S);
  gain.gain.linearRampToValueAtTime(0, to);
  tone.connect(gain).connect(context.destination);
  tone.start(from);
  tone.stop(to);
}

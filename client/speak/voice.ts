import { browserStorage } from '../storage.ts';
import { type Beep, CUES, type Cue } from './cues.ts';

export interface VoiceSettings {
  muted: boolean;
  /** 1 is the voice's own pace. */
  rate: number;
  /** 0 to 1. */
  volume: number;
}

const KEY = 'voice';
export const DEFAULT_VOICE: VoiceSettings = { muted: false, rate: 1, volume: 1 };

export function loadVoice(): VoiceSettings {
  const kept = browserStorage.read(KEY) as Partial<VoiceSettings> | undefined;
  return {
    muted: kept?.muted === true,
    rate: within(kept?.rate, 0.7, 1.6),
    volume: within(kept?.volume, 0.1, 1),
  };
}

export const saveVoice = (settings: VoiceSettings): void => void browserStorage.write(KEY, settings);

const within = (x: unknown, low: number, high: number): number =>
  typeof x === 'number' ? Math.min(high, Math.max(low, x)) : 1;

/** The phone's voice, its tones and its buzz, behind the three things a speaker asks for. */
export interface Voice {
  readonly available: boolean;
  /** Has to be called within a tap once, or iOS keeps the page silent. */
  unlock(): void;
  speak(text: string, settings: VoiceSettings, on: { began(): void; ended(): void }): void;
  cut(): void;
  cue(cue: Cue, settings: VoiceSettings): void;
}

export function browserVoice(): Voice {
  const synthesis: SpeechSynthesis | undefined = globalThis.speechSynthesis;
  const tones = toneMaker();
  /** Held, for some browsers forget to report the end of an utterance nobody holds. */
  let current: SpeechSynthesisUtterance | undefined;

  return {
    available: synthesis !== undefined,
    unlock() {
      tones.unlock();
      if (!synthesis || synthesis.speaking) return;
      const empty = new SpeechSynthesisUtterance(' ');
      empty.volume = 0;
      synthesis.speak(empty);
    },
    speak(text, { rate, volume }, { began, ended }) {
      if (!synthesis) return;
      const utterance = new SpeechSynthesisUtterance(text);
      const voice = englishVoice(synthesis.getVoices());
      if (voice) utterance.voice = voice;
      utterance.lang = voice?.lang ?? 'en';
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
    cue(cue, { volume, muted }) {
      const { beeps, buzz } = CUES[cue];
      navigator.vibrate?.([...buzz]);
      if (!muted) tones.play(beeps, volume);
    },
  };
}

/** A voice of the phone itself first: one from the network falls silent in a hall without any. */
function englishVoice(voices: readonly SpeechSynthesisVoice[]): SpeechSynthesisVoice | undefined {
  const english = voices.filter((v) => v.lang.toLowerCase().startsWith('en'));
  return (
    english.find((v) => v.localService && v.default) ?? english.find((v) => v.localService) ?? english[0]
  );
}

const FROZEN_MS = 1_000;

/** Plays beeps; after a call or a locked screen the audio clock can stand still though it says it runs. */
function toneMaker() {
  let context: AudioContext | undefined;
  let seen = { audio: -1, wall: 0 };
  return {
    unlock() {
      context ??= new AudioContext();
      void context.resume();
    },
    play(beeps: readonly Beep[], volume: number) {
      if (!context) return;
      const frozen = context.currentTime === seen.audio && performance.now() - seen.wall > FROZEN_MS;
      if (frozen) {
        void context.close();
        context = new AudioContext();
      }
      void context.resume();
      seen = { audio: context.currentTime, wall: performance.now() };
      for (const beep of beeps) sound(context, beep, volume);
    },
  };
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

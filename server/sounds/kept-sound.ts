import wavefile from 'wavefile';
import { resampler } from '../../src/audio/resample.ts';
import { type Enclosure, enclosureHash } from '../../src/log/enclosure.ts';
import type { KeptSound } from '../../src/model/sound.ts';
import { SAMPLE_RATE } from '../../src/protocol/socket.ts';
import { newSalt } from '../guard/secrets.ts';

/** Of kept sound, samples a second. The speech model hears nothing above its half. */
const KEPT_RATE = 8_000;
const DAY_MS = 24 * 3600 * 1000;

/** The sound of one talk, ready to lie beside its entry. `until`, and so the days, by the log's clock. */
export interface SoundToKeep {
  readonly fact: KeptSound;
  readonly enclosure: Enclosure;
}

/** `pcm`: as it came over the wire. `now`: ms. */
export function soundToKeep(pcm: Buffer, days: number, now: number): SoundToKeep {
  const content = compressed(pcm);
  const enclosure = { salt: newSalt(), content };
  const fact = { hash: enclosureHash(enclosure), bytes: content.length, until: now + days * DAY_MS };
  return { fact, enclosure };
}

/** A WAV file: mono, 8 kHz, mu-law (ITU-T G.711), a quarter of what came. Every browser plays it. */
export function compressed(pcm: Buffer): Uint8Array {
  const wide = new Float32Array(pcm.length >> 1);
  for (let i = 0; i < wide.length; i++) wide[i] = pcm.readInt16LE(2 * i);
  const resample = resampler(SAMPLE_RATE, KEPT_RATE);
  const narrow = Int16Array.from([...resample.push(wide), ...resample.flush()], (x) =>
    Math.max(-32_768, Math.min(32_767, Math.round(x))),
  );
  const wav = new wavefile.WaveFile();
  wav.fromScratch(1, KEPT_RATE, '16', narrow);
  wav.toMuLaw();
  return wav.toBuffer();
}

import { readFile } from 'node:fs/promises';
import { FLACDecoder } from '@wasm-audio-decoders/flac';
import wavefile from 'wavefile';
import { resampler } from '../../src/audio/resample.ts';
import { SAMPLE_RATE } from '../../src/protocol/socket.ts';

/** A sound file that cannot be read. The message says why. */
export class BadSoundFile extends Error {
  override name = 'BadSoundFile';
}

/** Mono, 16 kHz, -1 to 1, of a WAV or FLAC file of any rate. Rejects with `BadSoundFile`. */
export async function readSound(file: string): Promise<Float32Array> {
  const bytes = await readFile(file).catch((error: unknown) => {
    throw new BadSoundFile(error instanceof Error ? error.message : String(error));
  });
  const { channels, rate } = await decode(file, bytes);
  const mono = mixed(channels);
  const resample = resampler(rate, SAMPLE_RATE);
  const parts = [resample.push(mono), resample.flush()];
  const samples = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    samples.set(part, at);
    at += part.length;
  }
  return samples;
}

interface Sound {
  channels: Float32Array[];
  rate: number;
}

async function decode(file: string, bytes: Uint8Array): Promise<Sound> {
  const magic = String.fromCharCode(...bytes.subarray(0, 4));
  if (magic === 'fLaC') return fromFlac(file, bytes);
  if (magic === 'RIFF' || magic === 'RIFX') return fromWav(file, bytes);
  throw new BadSoundFile(`${file} is neither a WAV nor a FLAC file.`);
}

async function fromFlac(file: string, bytes: Uint8Array): Promise<Sound> {
  const decoder = new FLACDecoder();
  await decoder.ready;
  const { channelData, sampleRate, errors } = await decoder.decodeFile(bytes);
  decoder.free();
  if (channelData.length === 0 || errors.length > 0)
    throw new BadSoundFile(`${file} is a damaged FLAC file.`);
  return { channels: channelData, rate: sampleRate };
}

function fromWav(file: string, bytes: Uint8Array): Sound {
  try {
    const wav = new wavefile.WaveFile(bytes);
    wav.toBitDepth('32f');
    const samples = wav.getSamples(false, Float32Array) as unknown as Float32Array | Float32Array[];
    const { sampleRate } = wav.fmt as { sampleRate: number };
    return { channels: Array.isArray(samples) ? samples : [samples], rate: sampleRate };
  } catch (error) {
    throw new BadSoundFile(
      `${file} cannot be read: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}

function mixed(channels: readonly Float32Array[]): Float32Array {
  const [first = new Float32Array(0), ...others] = channels;
  if (others.length === 0) return first;
  return first.map((x, i) => others.reduce((sum, channel) => sum + (channel[i] ?? 0), x) / channels.length);
}

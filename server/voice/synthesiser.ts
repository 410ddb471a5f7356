import { createRequire } from 'node:module';

/** The synthesiser is no part of this program: whoever wants it installs it, and takes on its licence. */
export const SYNTHESISER = {
  package: 'text2wav',
  /** Its own code is under MIT; eSpeak NG's licence is as Debian's copyright file of espeak-ng 1.51 has it. */
  licence: 'carries eSpeak NG under GPL-3.0-or-later',
  install: 'npm install --no-save text2wav@0.0.14',
} as const;

/** Makes a mono WAV. `speed`: words a minute, as text. */
export type Synthesise = (text: string, options: { voice: string; speed: string }) => Promise<Uint8Array>;

export function isInstalled(): boolean {
  try {
    createRequire(import.meta.url).resolve(SYNTHESISER.package);
    return true;
  } catch {
    return false;
  }
}

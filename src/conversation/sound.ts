import { NOT_YET_A_JOB } from '../phrases/photos.ts';
import { PRACTICE_SOUND, SOUND_NOT_KEPT, soundKeptText } from '../phrases/sound.ts';
import type { Composer } from './composer.ts';
import type { Input, Refused } from './input.ts';

/** From here on sound is kept, or no longer; both hear it. The same again changes nothing. */
export function keepSound(job: Composer, { seat, days }: Extract<Input, { kind: 'sound' }>): Refused {
  if (!job.state.setup) return { reason: 'bad-target', text: NOT_YET_A_JOB };
  if (job.state.setup.practice) return { reason: 'bad-target', text: PRACTICE_SOUND };
  if (days === (job.state.soundDays ?? 0)) return;
  job.put(seat, { type: 'sound', seat, days });
  job.notice('sound', days > 0 ? soundKeptText(days) : SOUND_NOT_KEPT);
  return;
}

/** Whoever comes while sound is kept hears it, too. */
export function remindOfSound(job: Composer): void {
  const { soundDays = 0 } = job.state;
  if (soundDays > 0) job.notice('sound', soundKeptText(soundDays));
}

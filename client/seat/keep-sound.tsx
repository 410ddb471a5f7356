import { SOUND_DAYS } from '../../src/model/sound.ts';
import {
  keepSoundButton,
  SOUND_IS_OFF,
  SOUND_ON_PHONE_NOT_KEPT,
  SOUND_TITLE,
  STOP_KEEPING,
  soundIsOn,
} from '../../src/phrases/sound.ts';
import type { Room } from './use-room.ts';

/** In the menu of a seat: whether the sound of what is said is kept. In practice nothing is. */
export function KeepSound({ room }: { room: Room }) {
  const { job, post } = room;
  if (room.inPage || room.saved.here || job.setup?.practice) return null;
  const { soundDays = 0 } = job;
  return (
    <section class="keep-sound" aria-labelledby="keep-sound-title">
      <h3 id="keep-sound-title">{SOUND_TITLE}</h3>
      <p>{soundDays > 0 ? soundIsOn(soundDays) : SOUND_IS_OFF}</p>
      <p class="note">{SOUND_ON_PHONE_NOT_KEPT}</p>
      <button
        type="button"
        class="button"
        onClick={() => post({ t: 'sound', days: soundDays > 0 ? 0 : SOUND_DAYS })}
      >
        {soundDays > 0 ? STOP_KEEPING : keepSoundButton(SOUND_DAYS)}
      </button>
    </section>
  );
}

import { CAMERA_NOTICES } from '../../src/phrases/camera.ts';
import { handOverText } from '../../src/phrases/hand-over.ts';
import { sensorNotice } from '../../src/phrases/indicator.ts';
import { ANSWER_TO_ASKER, NEW_JOIN_CODE, takeBackText } from '../../src/phrases/letters.ts';
import { hangsText } from '../../src/phrases/mounting.ts';
import { personText } from '../../src/phrases/people.ts';
import { practisedText } from '../../src/phrases/practised.ts';
import { keepSoundButton, STOP_KEEPING } from '../../src/phrases/sound.ts';
import type { Letter } from '../link/link.ts';

/** What a letter that waits says, in words. */
export function letterText(letter: Letter): string {
  switch (letter.t) {
    case 'invite':
      return NEW_JOIN_CODE;
    case 'admit':
      return ANSWER_TO_ASKER[letter.answer];
    case 'hand-over':
      return handOverText(letter.fact, undefined);
    case 'practise':
      return practisedText(letter.act);
    case 'override':
      return letter.reason;
    case 'camera':
      return CAMERA_NOTICES[letter.state];
    case 'sensor':
      return sensorNotice(letter);
    case 'take-back':
      return takeBackText(letter.target);
    case 'person':
      return personText(letter.person);
    case 'mounted':
      return hangsText(letter.mounting);
    case 'sound':
      return letter.days > 0 ? keepSoundButton(letter.days) : STOP_KEEPING;
    default:
      return letter.text;
  }
}

import type { Answer } from '../../src/phrases/answers.ts';
import type { Room } from './use-room.ts';

/** Words still unsent after this are said to be kept; on a good link they are gone before. */
const NOTICED_MS = 700;

/** A button that says its words; while they wait for the link, it says so instead. */
export function AnswerButton({ room, answer, class: look }: { room: Room; answer: Answer; class: string }) {
  const { label, words } = answer;
  const since = room.waiting(words);
  const kept = since !== undefined && room.now - since > NOTICED_MS;
  return (
    <button type="button" class={kept ? `${look} kept` : look} onClick={() => room.say(words, 'button')}>
      {label}
      {kept && <small>kept, sent when linked</small>}
    </button>
  );
}

import type { Answer } from '../../src/phrases/answers.ts';
import type { Room } from './use-room.ts';

/** If words are still not sent after this time, the button says that they are kept. A good link is faster. */
const NOTICED_MS = 700;

/** A button that says its words. While they wait for the link, it shows that. */
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

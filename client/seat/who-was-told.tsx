import { useState } from 'preact/hooks';
import { toldWords } from '../../src/phrases/buttons.ts';
import type { Room } from './use-room.ts';

/** For the question who was told: a yes is not enough. The name is typed here, or spoken. */
export function ToldBox({ room }: { room: Room }) {
  const [who, setWho] = useState('');
  const action = room.order.kind === 'current' ? room.order.instruction.advice.action : undefined;
  if (action?.kind !== 'confirm-item' || action.item !== 'people-told') return null;
  const submit = (event: Event) => {
    event.preventDefault();
    if (who.trim() === '') return;
    room.say(toldWords(who), 'typed');
    setWho('');
  };
  return (
    <form class="told-box" onSubmit={submit}>
      <input
        value={who}
        aria-label="Who was told that the alarm is out of service?"
        placeholder="The control room"
        maxLength={200}
        autocomplete="off"
        enterkeyhint="send"
        onInput={(event) => setWho(event.currentTarget.value)}
      />
      <button type="submit" class="button main" disabled={who.trim() === ''}>
        Told
      </button>
    </form>
  );
}

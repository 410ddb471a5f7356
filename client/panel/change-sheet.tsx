import { useState } from 'preact/hooks';
import { typedIn } from '../language/languages.ts';
import type { Room } from '../seat/use-room.ts';
import { Field } from '../ui/field.tsx';
import { Sheet } from '../ui/sheet.tsx';
import type { Made } from './made.ts';

/** Corrects or takes back one report. The first entry stays in the log in both cases. */
export function ChangeSheet({ room, made, onClose }: { room: Room; made: Made; onClose: () => void }) {
  const [text, setText] = useState('');
  const correct = (event: Event) => {
    event.preventDefault();
    if (text.trim() === '') return;
    const language = typedIn();
    room.post({ t: 'correct', target: made.seq, text: text.trim(), ...(language && { language }) });
    onClose();
  };
  const takeBack = () => {
    room.post({ t: 'take-back', target: made.seq });
    onClose();
  };
  return (
    <Sheet title={made.text} onClose={onClose}>
      {made.type === 'reading' && (
        <form onSubmit={correct} class="correct">
          <Field
            label="What did the meter show?"
            value={text}
            unit={room.job.setup?.meter.unit}
            inputMode="decimal"
            onInput={setText}
          />
          <button type="submit" class="button main" disabled={text.trim() === ''}>
            Correct it
          </button>
        </form>
      )}
      <button type="button" class="button" onClick={takeBack}>
        Take it back
      </button>
      <p class="hint">What was heard first stays in the record, marked as taken back.</p>
    </Sheet>
  );
}

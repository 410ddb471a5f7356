import { useState } from 'preact/hooks';
import {
  REMARK_HINT,
  REMARK_NAME,
  REMARK_SEND,
  REMARK_SENT,
  REMARK_TITLE,
  REMARK_WORDS,
  remarkWaitsText,
} from '../../src/phrases/watcher-remark.ts';
import { browserStorage } from '../browser/storage.ts';
import { ownPerson, personIn, rememberPerson, type TypedPerson } from '../people/saved-person.ts';
import { Field } from '../ui/field.tsx';
import type { Watched } from './log.ts';

/** Who watches talks to the crew, under a name. */
export function WatcherRemark({ watched }: { watched: Watched }) {
  const [person, setPerson] = useState<TypedPerson>(() => ownPerson(browserStorage));
  const [text, setText] = useState('');
  const [sent, setSent] = useState(false);
  const { waiting, refused, remark } = watched;
  const by = personIn(person)?.name;
  const submit = (event: Event) => {
    event.preventDefault();
    if (!by || text.trim() === '') return;
    rememberPerson(browserStorage, person);
    remark(by, text.trim());
    setText('');
    setSent(true);
  };
  const stand = waiting > 0 ? remarkWaitsText(waiting) : sent && !refused ? REMARK_SENT : '';
  return (
    <details class="more watcher-remark">
      <summary>{REMARK_TITLE}</summary>
      <form onSubmit={submit}>
        <p>{REMARK_HINT}</p>
        <Field
          label={REMARK_NAME}
          value={person.name}
          maxLength={80}
          onInput={(name) => setPerson({ ...person, name })}
        />
        <Field label={REMARK_WORDS} value={text} maxLength={500} onInput={setText} />
        <button type="submit" class="button main" disabled={!by || text.trim() === ''}>
          {REMARK_SEND}
        </button>
        <p class="note" role="status">
          {stand}
        </p>
        {refused && (
          <p class="failure" role="alert">
            {refused}
          </p>
        )}
      </form>
    </details>
  );
}

import { useState } from 'preact/hooks';
import { personText } from '../../src/phrases/people.ts';
import { Field, Fields } from '../ui/field.tsx';
import { personIn, type TypedPerson } from './saved-person.ts';

interface PersonFormProps {
  typed: TypedPerson;
  onInput: (typed: TypedPerson) => void;
  /** True: the boxes show at once, also for somebody who is known. */
  open?: boolean;
}

/** Asks once who is at this phone; somebody who is known is only shown, and can be changed. */
export function PersonForm({ typed, onInput, open = false }: PersonFormProps) {
  const [asked, setAsked] = useState(open || typed.name === '');
  if (!asked) {
    return (
      <div class="person-known">
        <p>
          You are <strong>{personText(personIn(typed))}</strong>
        </p>
        <button type="button" class="button" onClick={() => setAsked(true)}>
          Somebody else
        </button>
      </div>
    );
  }
  return (
    <Fields legend="Who is at this phone?">
      <Field
        label="Your name"
        value={typed.name}
        maxLength={80}
        hint="Stands in the record. You can go on without: it then says “not named”."
        onInput={(name) => onInput({ ...typed, name })}
      />
      <Field
        label="Firm"
        value={typed.firm}
        maxLength={80}
        hint="If you like."
        onInput={(firm) => onInput({ ...typed, firm })}
      />
      <Field
        label="Competence"
        value={typed.competence}
        maxLength={120}
        hint="Such as a card or a course, if you like."
        onInput={(competence) => onInput({ ...typed, competence })}
      />
    </Fields>
  );
}

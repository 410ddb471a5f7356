import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { type AsLeftField, BuildingState, type HandOverFact, Sun } from '../../src/model/hand-over.ts';
import type { Reading } from '../../src/model/reading.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { StepResult } from '../../src/model/steps.ts';
import { BUILDING_WORDS, expectedHint, SUN_WORDS } from '../../src/phrases/hand-over.ts';
import { NOT_ANSWERED, STEP_RESULTS } from '../../src/phrases/steps.ts';
import type { HandOver } from '../../src/visit/hand-over.ts';
import type { AnsweredStep } from '../../src/visit/steps.ts';
import { DayField, Field } from '../ui/field.tsx';
import { expectedDraft, leftDraft, leftUnits, parseLeft } from './draft.ts';
import type { Item } from './items.ts';

interface Props {
  item: Item;
  setup: JobSetup;
  handOver: HandOver;
  reading: Reading | undefined;
  onWrite: (fact: HandOverFact) => void;
}

/** What is asked about one thing, and the button that writes it down. */
export function ItemForm({ item, ...props }: Props) {
  switch (item.kind) {
    case 'step':
      return <StepForm step={item.step} {...props} />;
    case 'left':
      return <LeftForm field={item.field} name={item.name} {...props} />;
    case 'sun':
      return <SunForm name={item.name} {...props} />;
    case 'weather':
      return <WeatherForm name={item.name} {...props} />;
    case 'building':
      return <BuildingForm name={item.name} {...props} />;
    case 'variation':
      return <VariationForm {...props} />;
    case 'next':
      return <NextForm {...props} />;
  }
}

type FormProps = Omit<Props, 'item'>;

function WriteForm({
  ready,
  onSubmit,
  children,
}: {
  ready: boolean;
  onSubmit: () => void;
  children: ComponentChildren;
}) {
  const submit = (event: Event) => {
    event.preventDefault();
    if (ready) onSubmit();
  };
  return (
    <form class="hand-over-form" onSubmit={submit}>
      {children}
      <button type="submit" class="button main" disabled={!ready}>
        Write it down
      </button>
    </form>
  );
}

/** The shortest note, step or variation that says something. */
const SHORTEST = 3;

function StepForm({ step: { cause, effect, answer }, onWrite }: FormProps & { step: AnsweredStep }) {
  const [note, setNote] = useState('');
  const words = note.trim();
  return (
    <div class="hand-over-form">
      <p>
        <strong>{cause}</strong>
        <br />
        {effect}
      </p>
      <p class="hint">
        {answer ? STEP_RESULTS[answer.result] : NOT_ANSWERED}
        {answer?.note && `, ${answer.note}`}
      </p>
      <Field label="Note" value={note} maxLength={500} onInput={setNote} />
      {StepResult.options.map((result) => (
        <button
          key={result}
          type="button"
          class="button"
          disabled={words.length > 0 && words.length < SHORTEST}
          onClick={() => onWrite({ type: 'step', cause, result, ...(words && { note: words }) })}
        >
          {STEP_RESULTS[result]}
        </button>
      ))}
    </div>
  );
}

const DECIMALS: ReadonlySet<AsLeftField> = new Set(['signal', 'alarmDelay', 'faultDelay']);

function LeftForm({
  field,
  name,
  setup,
  handOver,
  reading,
  onWrite,
}: FormProps & { field: AsLeftField; name: string }) {
  const [text, setText] = useState(leftDraft(setup, handOver.asLeft)[field]);
  const { values, errors } = parseLeft({ ...leftDraft(setup, {}), [field]: text }, setup);
  const signal = reading?.kind === 'value' ? reading.value : undefined;
  return (
    <WriteForm
      ready={values[field] !== undefined && !errors[field]}
      onSubmit={() => onWrite({ type: 'as-left', values })}
    >
      <Field
        label={name}
        value={text}
        unit={leftUnits(setup)[field]}
        hint={expectedHint(field, expectedDraft(setup, signal)[field])}
        error={errors[field]}
        inputMode={DECIMALS.has(field) ? 'decimal' : 'text'}
        maxLength={80}
        onInput={setText}
      />
      <p class="hint">Write what you find at the device, not what was planned.</p>
    </WriteForm>
  );
}

/** Conditions are written whole: the other ones stay as they are. */
const others = ({ conditions }: HandOver): Extract<HandOverFact, { type: 'conditions' }> => {
  const { sun, weather, building } = conditions ?? {};
  return {
    type: 'conditions',
    ...(sun && { sun }),
    ...(weather && { weather }),
    ...(building && { building }),
  };
};

function SunForm({ name, handOver, onWrite }: FormProps & { name: string }) {
  return (
    <div class="hand-over-form">
      <p>
        <strong>{name}</strong>
      </p>
      {Sun.options.map((sun) => (
        <button
          key={sun}
          type="button"
          class="button"
          aria-pressed={handOver.conditions?.sun === sun}
          onClick={() => onWrite({ ...others(handOver), sun })}
        >
          {SUN_WORDS[sun]}
        </button>
      ))}
    </div>
  );
}

function WeatherForm({ name, handOver, onWrite }: FormProps & { name: string }) {
  const [text, setText] = useState(handOver.conditions?.weather ?? '');
  const weather = text.trim();
  return (
    <WriteForm ready={weather !== ''} onSubmit={() => onWrite({ ...others(handOver), weather })}>
      <Field label={name} value={text} maxLength={80} onInput={setText} />
    </WriteForm>
  );
}

function BuildingForm({ name, handOver, onWrite }: FormProps & { name: string }) {
  const [chosen, setChosen] = useState<readonly BuildingState[]>(handOver.conditions?.building ?? []);
  return (
    <WriteForm
      ready={chosen.length > 0}
      onSubmit={() => onWrite({ ...others(handOver), building: [...chosen] })}
    >
      <fieldset class="fields">
        <legend>{name}</legend>
        {BuildingState.options.map((state) => (
          <label key={state} class="hand-over-tick">
            <input
              type="checkbox"
              checked={chosen.includes(state)}
              onChange={(event) =>
                setChosen(
                  event.currentTarget.checked ? [...chosen, state] : chosen.filter((each) => each !== state),
                )
              }
            />
            {BUILDING_WORDS[state]}
          </label>
        ))}
      </fieldset>
    </WriteForm>
  );
}

function VariationForm({ onWrite }: FormProps) {
  const [what, setWhat] = useState('');
  const [agreedWith, setAgreed] = useState('');
  return (
    <WriteForm
      ready={what.trim().length >= SHORTEST && agreedWith.trim() !== ''}
      onSubmit={() => onWrite({ type: 'variation', what: what.trim(), agreedWith: agreedWith.trim() })}
    >
      <Field label="What is otherwise" value={what} maxLength={500} onInput={setWhat} />
      <Field label="Agreed with" value={agreedWith} maxLength={80} onInput={setAgreed} />
    </WriteForm>
  );
}

function NextForm({ handOver: { nextDue }, onWrite }: FormProps) {
  const [what, setWhat] = useState(nextDue?.what ?? '');
  const [on, setOn] = useState(nextDue?.on ?? '');
  return (
    <WriteForm
      ready={what.trim().length >= SHORTEST && on !== ''}
      onSubmit={() => onWrite({ type: 'next-due', what: what.trim(), on })}
    >
      <Field label="To be done next" value={what} maxLength={500} onInput={setWhat} />
      <DayField label="By" value={on} onInput={setOn} />
    </WriteForm>
  );
}

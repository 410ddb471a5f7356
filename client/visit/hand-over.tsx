import { useMemo, useState } from 'preact/hooks';
import { AS_LEFT_FIELDS, type AsLeftField, BuildingState, Sun } from '../../src/model/hand-over.ts';
import type { Seq } from '../../src/model/ids.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import {
  BUILDING_WORDS,
  capital,
  expectedHint,
  HAND_OVER_ROWS,
  LEFT_NAMES,
  leftText,
  NO_HAND_OVER,
  SUN_WORDS,
  variationText,
} from '../../src/phrases/hand-over.ts';
import { shownFor } from '../../src/phrases/units.ts';
import type { VisitRecord } from '../../src/record/visit-record.ts';
import { handOverRows } from '../../src/report/hand-over.ts';
import { expectedDraft, leftDraft, leftUnits, parseLeft } from '../hand-over/draft.ts';
import { Failure } from '../ui/failure.tsx';
import { Choice, DayField, Field } from '../ui/field.tsx';
import { useWrite, type WriteTo } from './use-write.ts';

interface Props extends WriteTo {
  record: VisitRecord;
  desk: boolean;
}

/** How the pair is handed over: what was written down, and the forms to write it. */
export function HandOverSection({ token, job, record, desk, onWritten }: Props) {
  const { state } = record;
  const { setup, handOver, accepted } = state;
  if (!setup) return null;
  const rows = handOverRows(handOver, setup);
  const form = { token, job, record, setup, onWritten };
  return (
    <section aria-labelledby="hand-over-title" class="hand-over">
      <h2 id="hand-over-title">Hand-over</h2>
      {rows.length === 0 ? (
        <p>{NO_HAND_OVER}</p>
      ) : (
        <dl class="since">
          {rows.map(({ name, value }) => (
            <div key={`${name} ${value}`}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      )}
      {desk && accepted && (
        <>
          <LeftForm {...form} />
          <ConditionsForm {...form} />
          <VariationForm {...form} />
          <NextForm {...form} />
          <StrikeForm {...form} />
        </>
      )}
    </section>
  );
}

interface FormProps extends WriteTo {
  record: VisitRecord;
  setup: JobSetup;
}

function LeftForm({ record, setup, ...to }: FormProps) {
  const { reading } = record.final ?? {};
  const signal = reading?.kind === 'value' ? reading.value : undefined;
  const start = useMemo(() => leftDraft(setup, record.state.handOver.asLeft), [setup, record.state.handOver]);
  const [typed, setTyped] = useState<Partial<typeof start>>({});
  const expected = useMemo(() => expectedDraft(setup, signal), [setup, signal]);
  const draft = { ...start, ...typed };
  const { values, errors } = parseLeft(draft, setup);
  const { busy, failure, write } = useWrite(to);
  const units = leftUnits(setup);
  const submit = async (event: Event) => {
    event.preventDefault();
    if (await write({ type: 'as-left', values })) setTyped({});
  };
  return (
    <details class="more">
      <summary>As left</summary>
      <form class="sign-form" onSubmit={submit}>
        <p>Write what you find at the device, not what was planned. Leave empty what you do not know.</p>
        {AS_LEFT_FIELDS.map((field) => (
          <Field
            key={field}
            label={capital(LEFT_NAMES[field])}
            value={draft[field]}
            unit={units[field]}
            hint={expectedHint(field, expected[field])}
            error={errors[field]}
            maxLength={80}
            onInput={(text) => setTyped({ ...typed, [field]: text })}
          />
        ))}
        <Failure text={failure} />
        <button
          type="submit"
          class="button main"
          disabled={busy || Object.keys(errors).length > 0 || Object.keys(values).length === 0}
        >
          Write it down as left
        </button>
      </form>
    </details>
  );
}

function ConditionsForm({ record, ...to }: FormProps) {
  const { conditions } = record.state.handOver;
  const [sun, setSun] = useState<string>(conditions?.sun ?? '');
  const [weather, setWeather] = useState(conditions?.weather ?? '');
  const [building, setBuilding] = useState<readonly BuildingState[]>(conditions?.building ?? []);
  const { busy, failure, write } = useWrite(to);
  const submit = async (event: Event) => {
    event.preventDefault();
    const chosen = Sun.safeParse(sun).data;
    await write({
      type: 'conditions',
      ...(chosen && { sun: chosen }),
      ...(weather.trim() && { weather: weather.trim() }),
      ...(building.length > 0 && { building: [...building] }),
    });
  };
  const suns = Sun.options.map((value) => ({ value, label: SUN_WORDS[value] }));
  return (
    <details class="more">
      <summary>Conditions</summary>
      <form class="sign-form" onSubmit={submit}>
        <Choice
          label="Sun"
          value={sun}
          options={[{ value: '', label: 'not looked at' }, ...suns]}
          onInput={setSun}
        />
        <Field label="Weather" value={weather} maxLength={80} onInput={setWeather} />
        <fieldset class="fields ticks">
          <legend>Building</legend>
          {BuildingState.options.map((state) => (
            <label key={state} class="tick">
              <input
                type="checkbox"
                checked={building.includes(state)}
                onChange={(event) =>
                  setBuilding(
                    event.currentTarget.checked
                      ? [...building, state]
                      : building.filter((each) => each !== state),
                  )
                }
              />
              {BUILDING_WORDS[state]}
            </label>
          ))}
        </fieldset>
        <Failure text={failure} />
        <button type="submit" class="button main" disabled={busy}>
          Write the conditions down
        </button>
      </form>
    </details>
  );
}

function VariationForm(to: FormProps) {
  const [what, setWhat] = useState('');
  const [agreedWith, setAgreed] = useState('');
  const { busy, failure, write } = useWrite(to);
  const submit = async (event: Event) => {
    event.preventDefault();
    if (!(await write({ type: 'variation', what: what.trim(), agreedWith: agreedWith.trim() }))) return;
    setWhat('');
    setAgreed('');
  };
  return (
    <details class="more">
      <summary>A variation agreed</summary>
      <form class="sign-form" onSubmit={submit}>
        <Field label="What is otherwise" value={what} maxLength={500} onInput={setWhat} />
        <Field label="Agreed with" value={agreedWith} maxLength={80} onInput={setAgreed} />
        <Failure text={failure} />
        <button
          type="submit"
          class="button main"
          disabled={busy || what.trim().length < SHORTEST || !agreedWith.trim()}
        >
          Write the variation down
        </button>
      </form>
    </details>
  );
}

const SHORTEST = 3;

function NextForm({ record, ...to }: FormProps) {
  const { nextDue } = record.state.handOver;
  const [what, setWhat] = useState(nextDue?.what ?? '');
  const [on, setOn] = useState(nextDue?.on ?? '');
  const { busy, failure, write } = useWrite(to);
  const submit = (event: Event) => {
    event.preventDefault();
    return write({ type: 'next-due', what: what.trim(), on });
  };
  return (
    <details class="more">
      <summary>To be done next</summary>
      <form class="sign-form" onSubmit={submit}>
        <Field label="What" value={what} maxLength={500} onInput={setWhat} />
        <DayField label="By" value={on} onInput={setOn} />
        <Failure text={failure} />
        <button
          type="submit"
          class="button main"
          disabled={busy || what.trim().length < SHORTEST || on === ''}
        >
          Write down what is next
        </button>
      </form>
    </details>
  );
}

/** What stands, and can be struck out. */
function standing({ handOver }: VisitRecord['state'], setup: JobSetup): Standing[] {
  const { asLeft, leftBy, variations } = handOver;
  return [
    ...AS_LEFT_FIELDS.flatMap((field): Standing[] => {
      const entry = leftBy[field];
      const value = leftText(field, asLeft, setup.meter, shownFor(setup));
      return entry === undefined ? [] : [{ entry, field, text: `${capital(LEFT_NAMES[field])}: ${value}` }];
    }),
    ...variations.flatMap(({ seq, what, agreedWith, struck }): Standing[] =>
      struck ? [] : [{ entry: seq, text: `${HAND_OVER_ROWS.variation}: ${variationText(what, agreedWith)}` }],
    ),
  ];
}

interface Standing {
  readonly entry: Seq;
  readonly field?: AsLeftField;
  readonly text: string;
}

function StrikeForm({ record, setup, ...to }: FormProps) {
  const [chosen, setChosen] = useState('');
  const [why, setWhy] = useState('');
  const { busy, failure, write } = useWrite(to);
  const all = standing(record.state, setup);
  if (all.length === 0) return null;
  const keyOf = ({ entry, field }: Standing): string => `${entry} ${field ?? ''}`;
  const one = all.find((each) => keyOf(each) === chosen);
  const submit = async (event: Event) => {
    event.preventDefault();
    if (!one) return;
    const { entry, field } = one;
    const fact = { type: 'struck-out' as const, entry, ...(field && { field }), why: why.trim() };
    if (!(await write(fact))) return;
    setChosen('');
    setWhy('');
  };
  return (
    <details class="more">
      <summary>Written by mistake</summary>
      <form class="sign-form" onSubmit={submit}>
        <p>What you strike out stays in the record, with your reason.</p>
        <Choice
          label="What no longer holds"
          value={one ? chosen : ''}
          options={[
            { value: '', label: 'choose' },
            ...all.map((each) => ({ value: keyOf(each), label: each.text })),
          ]}
          onInput={setChosen}
        />
        <Field label="Why" value={why} maxLength={500} onInput={setWhy} />
        <Failure text={failure} />
        <button type="submit" class="button main" disabled={busy || !one || why.trim().length < SHORTEST}>
          Strike it out
        </button>
      </form>
    </details>
  );
}

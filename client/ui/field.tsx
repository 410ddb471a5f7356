import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

export interface FieldProps {
  label: string;
  value: string;
  onInput: (value: string) => void;
  hint?: string | undefined;
  error?: string | undefined;
  /** Shown after the number: "metres", "seconds". */
  unit?: string | undefined;
  inputMode?: 'text' | 'decimal' | 'numeric';
  placeholder?: string;
  maxLength?: number;
  /** Not shown while it is typed. */
  secret?: boolean;
}

/** A box with a label, and a hint or an error. */
export function Field(props: FieldProps) {
  const id = useId();
  const {
    label,
    value,
    onInput,
    hint,
    error,
    unit,
    inputMode = 'text',
    placeholder,
    maxLength,
    secret = false,
  } = props;
  return (
    <div class={error ? 'field wrong' : 'field'}>
      <label for={id}>{label}</label>
      <div class="field-box">
        <input
          id={id}
          type={(secret ? 'password' : 'text') as 'text'}
          value={value}
          inputMode={inputMode}
          placeholder={placeholder}
          maxLength={maxLength}
          autocomplete="off"
          aria-invalid={error ? true : undefined}
          aria-describedby={`${id}-note`}
          onInput={(event) => onInput(event.currentTarget.value)}
        />
        {unit && <span class="field-unit">{unit}</span>}
      </div>
      <Note id={`${id}-note`} hint={hint} error={error} />
    </div>
  );
}

/** A day of the calendar, as "2026-11-26"; empty where none is chosen. */
export function DayField({ label, value, onInput }: Pick<FieldProps, 'label' | 'value' | 'onInput'>) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <div class="field-box">
        <input id={id} type="date" value={value} onInput={(event) => onInput(event.currentTarget.value)} />
      </div>
    </div>
  );
}

export interface ChoiceProps {
  label: string;
  value: string;
  options: readonly { value: string; label: string }[];
  onInput: (value: string) => void;
  hint?: string | undefined;
  error?: string | undefined;
}

export function Choice({ label, value, options, onInput, hint, error }: ChoiceProps) {
  const id = useId();
  return (
    <div class={error ? 'field wrong' : 'field'}>
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-describedby={`${id}-note`}
        onChange={(event) => onInput(event.currentTarget.value)}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
      <Note id={`${id}-note`} hint={hint} error={error} />
    </div>
  );
}

const Note = ({ id, hint, error }: { id: string; hint?: string | undefined; error?: string | undefined }) => (
  <p id={id} class="field-note" role={error ? 'alert' : undefined}>
    {error ?? hint}
  </p>
);

export const Fields = ({ legend, children }: { legend: string; children: ComponentChildren }) => (
  <fieldset class="fields">
    <legend>{legend}</legend>
    {children}
  </fieldset>
);

import { OWN_GAIN_HIDES } from '../../src/phrases/looking.ts';
import { GAIN_NAMES, LAW_NAMES, METER_LABELS } from '../../src/phrases/profiles.ts';
import { Choice, Field, Fields } from '../ui/field.tsx';
import type { Errors, MeterDraft } from './profile-draft.ts';

interface MeterFormProps {
  meter: MeterDraft;
  errors: Errors;
  /** Something in it is wrong, so it must be shown. */
  open: boolean;
  onInput: (meter: MeterDraft) => void;
}

/** Every field of the meter, folded away: the neutral meters fit many panels as they are. */
export function MeterForm({ meter, errors, open, onInput }: MeterFormProps) {
  const put = (key: keyof MeterDraft) => (value: string) => onInput({ ...meter, [key]: value });
  const number = (key: keyof MeterDraft, unit: string = meter.unit, hint?: string) => (
    <Field
      label={METER_LABELS[key]}
      value={meter[key]}
      unit={unit}
      hint={hint}
      error={errors[`meter.${key}`]}
      inputMode="text"
      onInput={put(key)}
    />
  );
  return (
    <details class="more" open={open || undefined}>
      <summary>Edit the meter</summary>
      <Fields legend="What it shows">
        <Field
          label={METER_LABELS.name}
          value={meter.name}
          hint="This phone keeps a changed meter under its name."
          error={errors['meter.name']}
          maxLength={60}
          onInput={put('name')}
        />
        <Field
          label={METER_LABELS.unit}
          value={meter.unit}
          hint="As it is spoken: percent, counts, volts, dB."
          error={errors['meter.unit']}
          maxLength={20}
          onInput={put('unit')}
        />
        <div class="pairs">
          {number('min')}
          {number('max')}
        </div>
        {number('resolution')}
        <Choice
          label={METER_LABELS.law}
          value={meter.law}
          options={options(LAW_NAMES)}
          hint="If the maker does not say, choose not known."
          onInput={put('law')}
        />
        {meter.law === 'logarithmic' && number('dbPerUnit', 'dB')}
      </Fields>
      <Fields legend="What its numbers mean">
        {number('lostAt')}
        <div class="pairs">
          {number('bandLow')}
          {number('bandHigh')}
        </div>
        {number('saturatedAt')}
        {number('tolerance', meter.unit, 'Two readings no further apart count as the same.')}
      </Fields>
      <Fields legend="Its speed">
        <Speed meter={meter} errors={errors} onInput={onInput} />
        {(meter.gain === 'continuous' || meter.gain === 'stepped') && number('gainDbPerStep', 'dB')}
      </Fields>
    </details>
  );
}

interface SpeedProps extends Omit<MeterFormProps, 'open'> {
  /** An indicator without a number: what sets its own gain would hide the peak. */
  isIndicator?: boolean;
}

/** How long it takes, and how its gain is set: all that counts of an indicator that shows no number. */
export function Speed({ meter, errors, isIndicator, onInput }: SpeedProps) {
  const put = (key: keyof MeterDraft) => (value: string) => onInput({ ...meter, [key]: value });
  const { automatic, ...others } = GAIN_NAMES;
  const time = (key: 'settle' | 'hold') => (
    <Field
      label={METER_LABELS[key]}
      value={meter[key]}
      unit="seconds"
      error={errors[`meter.${key}`]}
      inputMode="decimal"
      onInput={put(key)}
    />
  );
  return (
    <>
      <div class="pairs">
        {time('settle')}
        {time('hold')}
      </div>
      <Choice
        label={METER_LABELS.gain}
        value={meter.gain}
        options={options(isIndicator ? others : GAIN_NAMES)}
        hint={isIndicator ? OWN_GAIN_HIDES : undefined}
        onInput={put('gain')}
      />
    </>
  );
}

const options = (names: Readonly<Record<string, string>>) =>
  Object.entries(names).map(([value, label]) => ({ value, label }));

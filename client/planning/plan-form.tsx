import type { MeterProfile } from '../../src/model/profile.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { LossUnit } from '../../src/model/units.ts';
import { meterText } from '../../src/phrases/profiles.ts';
import { LOSS_SIGNS } from '../../src/phrases/units.ts';
import { LENGTH_NAMES } from '../../src/phrases/units-chosen.ts';
import { AdjusterForm } from '../profiles/adjuster-form.tsx';
import { MeterForm } from '../profiles/meter-form.tsx';
import { adjusterDraft, type Errors, meterDraft } from '../profiles/profile-draft.ts';
import { Choice, Field } from '../ui/field.tsx';
import type { NumberField, PlanDraft } from './plan-draft.ts';

interface PlanFormProps {
  draft: PlanDraft;
  errors: Errors;
  meters: readonly MeterProfile[];
  /** The pair exists already: its id cannot change. */
  fixedId: boolean;
  /** What the threshold comes to in dB over the whole path, where it is told in another unit. */
  thresholdHint: string | undefined;
  onInput: (draft: PlanDraft) => void;
}

const ALARM_UNITS = LossUnit.options.map((value) => ({ value, label: LOSS_SIGNS[value] }));

const SITING = ['emitterHeight', 'receiverHeight', 'ceilingHeight', 'spacing', 'wallDistance'] as const;
const MAKERS = [
  'rangeMin',
  'rangeMax',
  'beamAngle',
  'leastSignal',
  'mostLoss',
  'filterPercent',
  'filters',
] as const;

/** Every figure of a pair's plan. What is not known is left empty, and not checked. */
export function PlanForm({ draft, errors, meters, fixedId, thresholdHint, onInput }: PlanFormProps) {
  const put = (patch: Partial<PlanDraft>) => onInput({ ...draft, ...patch });
  const number = (field: NumberField, label: string, unit: string, hint?: string) => (
    <Field
      label={label}
      unit={unit}
      value={draft[field]}
      hint={hint}
      error={errors[field]}
      inputMode="decimal"
      onInput={(value) => put({ [field]: value })}
    />
  );
  const metres = LENGTH_NAMES[draft.units.length];
  const wrongIn = (fields: readonly string[]) => fields.some((field) => errors[field] !== undefined);
  const wrongUnder = (prefix: string) => Object.keys(errors).some((path) => path.startsWith(prefix));
  return (
    <>
      <div class="pairs">
        {fixedId ? (
          <div class="field">
            <span class="fixed-label">Id</span>
            <strong class="fixed-id">{draft.id}</strong>
          </div>
        ) : (
          <Field
            label="Id"
            value={draft.id}
            placeholder="B2"
            error={errors.id}
            maxLength={32}
            onInput={(id) => put({ id })}
          />
        )}
        <Field
          label="Zone or address"
          value={draft.zone}
          error={errors.zone}
          maxLength={60}
          onInput={(zone) => put({ zone })}
        />
      </div>
      <Field
        label="Name"
        value={draft.name}
        placeholder="North aisle 2"
        hint="Without a name, its id is used."
        error={errors.name}
        maxLength={80}
        onInput={(name) => put({ name })}
      />
      {number('pathLength', 'Emitter to receiver', metres)}
      <div class="pairs">
        <Field
          label="Alarm at a loss of"
          value={draft.alarmThreshold}
          error={errors.alarmThreshold}
          inputMode="decimal"
          onInput={(alarmThreshold) => put({ alarmThreshold })}
        />
        <Choice
          label="In"
          value={draft.alarmUnit}
          options={ALARM_UNITS}
          onInput={(unit) => put({ alarmUnit: LossUnit.parse(unit) })}
        />
      </div>
      {thresholdHint && <p class="hint">{thresholdHint}</p>}
      <div class="pairs">
        {number('alarmDelay', 'Alarm delay', 'seconds')}
        {number('faultDelay', 'Fault delay', 'seconds')}
      </div>
      <details class="more" open={wrongIn(SITING) || undefined}>
        <summary>Heights and distances</summary>
        <div class="pairs">
          {number('emitterHeight', 'Emitter above floor', metres)}
          {number('receiverHeight', 'Receiver above floor', metres)}
          {number('ceilingHeight', 'Ceiling above floor', metres)}
          {number('spacing', 'To the next beam', metres)}
          {number('wallDistance', 'To the nearest wall', metres)}
        </div>
      </details>
      <details class="more" open={wrongIn(MAKERS) || undefined}>
        <summary>The maker's figures</summary>
        <div class="pairs">
          {number('rangeMin', 'Shortest path', metres)}
          {number('rangeMax', 'Longest path', metres)}
          {number('beamAngle', 'Full beam angle', 'degrees')}
          {number('leastSignal', 'Least signal', draft.meter?.unit ?? 'unit of the meter')}
          {number('mostLoss', 'Most loss since the first visit', 'dB')}
          {number('filterPercent', 'Test filter holds back', 'percent')}
        </div>
        <Field
          label="Test filters of the crew"
          unit="percent each"
          value={draft.filters}
          placeholder="20; 40; 60"
          hint="One below and one above the alarm threshold prove it from both sides."
          error={errors.filters}
          onInput={(filters) => put({ filters })}
        />
        <p class="hint">Without a test filter, half of the receiver is covered.</p>
      </details>
      <MeterChoice draft={draft} meters={meters} onInput={put} />
      {draft.meter && (
        <MeterForm
          meter={draft.meter}
          errors={errors}
          open={wrongUnder('meter.')}
          onInput={(meter) => put({ meter })}
        />
      )}
      {draft.adjusters ? (
        <AdjusterForm
          adjusters={draft.adjusters}
          errors={errors}
          open={wrongUnder('adjusters.')}
          onInput={(adjusters) => put({ adjusters })}
        />
      ) : (
        <button
          type="button"
          class="button"
          onClick={() => put({ adjusters: adjusterDraft(NEUTRAL_ADJUSTERS) })}
        >
          Enter its adjusters
        </button>
      )}
    </>
  );
}

const LATER = 'later';
const AS_IT_IS = 'as it is';

function MeterChoice({
  draft: { meter },
  meters,
  onInput,
}: {
  draft: PlanDraft;
  meters: readonly MeterProfile[];
  onInput: (patch: Pick<PlanDraft, 'meter'>) => void;
}) {
  const known = meter ? meters.findIndex(({ name }) => name === meter.name) : -1;
  const value = !meter ? LATER : known < 0 ? AS_IT_IS : String(known);
  const choose = (chosen: string) => {
    const profile = meters[Number(chosen)];
    onInput({ meter: chosen === AS_IT_IS ? meter : profile && meterDraft(profile) });
  };
  return (
    <Choice
      label="Meter"
      value={value}
      options={[
        ...(value === AS_IT_IS && meter ? [{ value: AS_IT_IS, label: meter.name }] : []),
        ...meters.map(({ name }, i) => ({ value: String(i), label: name })),
        { value: LATER, label: 'chosen when the visit begins' },
      ]}
      hint={meter && meterText(meter)}
      onInput={choose}
    />
  );
}

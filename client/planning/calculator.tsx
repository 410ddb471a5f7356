import { useState } from 'preact/hooks';
import type { Units } from '../../src/model/units.ts';
import { lengthFigures } from '../../src/phrases/units.ts';
import { LENGTH_NAMES } from '../../src/phrases/units-chosen.ts';
import { LOSS_FORMS, type LossForm, lossInAllForms } from '../../src/plan/attenuation.ts';
import { readLength } from '../../src/plan/lengths.ts';
import { Choice, Field } from '../ui/field.tsx';

const FORM_NAMES: Record<LossForm, string> = {
  dB: 'dB, whole path',
  percent: 'percent, whole path',
  'dB/m': 'dB per metre',
  'percent/m': 'percent per metre',
  'percent/ft': 'percent per foot',
  'OD/m': 'optical density per metre',
};

/** One loss of light, in every unit of the trade. */
export function Calculator({ path, units }: { path: number | undefined; units: Units }) {
  const [value, setValue] = useState('35');
  const [form, setForm] = useState<LossForm>('percent');
  const [typedPath, setTypedPath] = useState<string>();
  const pathText = typedPath ?? (path === undefined ? '' : String(lengthFigures(path, units.length)));
  const metres = typedPath === undefined ? path : readLength(typedPath, units.length);
  const losses = lossInAllForms(numberOf(value), form, metres ?? Number.NaN);
  return (
    <details class="card more calculator">
      <summary>Loss of light in other units</summary>
      <div class="pairs">
        <Field label="Loss" value={value} inputMode="decimal" onInput={setValue} />
        <Choice
          label="In"
          value={form}
          options={LOSS_FORMS.map((each) => ({ value: each, label: FORM_NAMES[each] }))}
          onInput={(chosen) => setForm(chosen as LossForm)}
        />
      </div>
      <Field
        label="Over a path of"
        unit={LENGTH_NAMES[units.length]}
        value={pathText}
        inputMode="decimal"
        onInput={setTypedPath}
      />
      {losses ? (
        <dl class="losses" aria-live="polite">
          {LOSS_FORMS.map((each) => (
            <div key={each}>
              <dt>{FORM_NAMES[each]}</dt>
              <dd>{Number(losses[each].toPrecision(4))}</dd>
            </div>
          ))}
        </dl>
      ) : (
        <p class="hint">Enter a loss from 0, in percent below 100, and a path above 0.</p>
      )}
    </details>
  );
}

const numberOf = (text: string): number => (text.trim() === '' ? Number.NaN : Number(text.replace(',', '.')));

import { ADJUSTER_LABELS } from '../../src/phrases/profiles.ts';
import { Field, Fields } from '../ui/field.tsx';
import type { AdjusterDraft, Errors } from './profile-draft.ts';

interface AdjusterFormProps {
  adjusters: AdjusterDraft;
  errors: Errors;
  open: boolean;
  onInput: (adjusters: AdjusterDraft) => void;
}

export function AdjusterForm({ adjusters, errors, open, onInput }: AdjusterFormProps) {
  const field = (key: keyof AdjusterDraft, unit?: string, hint?: string) => (
    <Field
      label={ADJUSTER_LABELS[key]}
      value={adjusters[key]}
      unit={unit}
      hint={hint}
      error={errors[`adjusters.${key}`]}
      inputMode={key === 'name' ? 'text' : 'decimal'}
      onInput={(value) => onInput({ ...adjusters, [key]: value })}
    />
  );
  return (
    <details class="more" open={open || undefined}>
      <summary>Edit the adjusters</summary>
      <Fields legend="The emitter's two screws">
        {field('name')}
        {field('maxStep', 'turns', 'What one hand can do in one movement.')}
        {field('backlash', 'turns', '0 if not known: it is learnt when it shows.')}
        {field('degreesPerTurn', 'degrees', 'If the maker states it.')}
        {field('travel', 'turns')}
      </Fields>
    </details>
  );
}

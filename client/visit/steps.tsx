import { useState } from 'preact/hooks';
import { StepResult as Results, type StepResult } from '../../src/model/steps.ts';
import { NOT_ANSWERED, STEP_RESULTS } from '../../src/phrases/steps.ts';
import type { VisitRecord } from '../../src/record/visit-record.ts';
import { type AnsweredStep, stepsOf } from '../../src/visit/steps.ts';
import { Failure } from '../ui/failure.tsx';
import { Field } from '../ui/field.tsx';
import { useWrite, type WriteTo } from './use-write.ts';

interface Props extends WriteTo {
  record: VisitRecord;
  desk: boolean;
}

/** Each step of cause and effect with its answer, and the buttons to answer it. */
export function Steps({ record, desk, ...to }: Props) {
  const { setup, handOver, accepted } = record.state;
  const steps = setup ? stepsOf(setup, handOver) : [];
  if (steps.length === 0) return null;
  return (
    <section class="visit-steps" aria-labelledby="steps-title">
      <h2 id="steps-title">Cause and effect</h2>
      <ol>
        {steps.map((step) => (
          <Step key={step.cause} step={step} open={desk && accepted !== undefined} {...to} />
        ))}
      </ol>
    </section>
  );
}

function Step({
  step: { cause, effect, answer },
  open,
  ...to
}: WriteTo & { step: AnsweredStep; open: boolean }) {
  const [note, setNote] = useState('');
  const { busy, failure, write } = useWrite(to);
  const give = async (result: StepResult) => {
    const words = note.trim();
    if (await write({ type: 'step', cause, result, ...(words && { note: words }) })) setNote('');
  };
  return (
    <li>
      <p>
        <strong>{cause}</strong>
        <br />
        {effect}
        <br />
        {answer ? STEP_RESULTS[answer.result] : NOT_ANSWERED}
        {answer?.note && `, ${answer.note}`}
      </p>
      {open && (
        <details class="more">
          <summary>{answer ? 'Answer it again' : 'Answer it'}</summary>
          <div class="step-answer">
            <Field label="Note" value={note} maxLength={500} onInput={setNote} />
            {Results.options.map((result) => (
              <button
                key={result}
                type="button"
                class="button"
                disabled={busy || (note.trim().length > 0 && note.trim().length < 3)}
                onClick={() => give(result)}
              >
                {STEP_RESULTS[result]}
              </button>
            ))}
            <Failure text={failure} />
          </div>
        </details>
      )}
    </li>
  );
}

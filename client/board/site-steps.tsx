import { useState } from 'preact/hooks';
import { MAX_SITE_STEPS, SiteSteps as Steps, type TestStep } from '../../src/model/steps.ts';
import { STEPS_OF_EVERY_VISIT, STEPS_SAVED } from '../../src/phrases/steps.ts';
import { useSend } from '../browser/use-send.ts';
import { defineSteps } from '../site/requests.ts';
import { Failure } from '../ui/failure.tsx';
import { Field } from '../ui/field.tsx';

interface Props {
  token: string;
  steps: readonly TestStep[] | undefined;
  onDefined: () => void;
}

/** The desk lists what is tried at every visit of its site, and what must then happen. */
export function SiteSteps({ token, steps = [], onDefined }: Props) {
  const [cause, setCause] = useState('');
  const [effect, setEffect] = useState('');
  const { busy, failure, send } = useSend();
  const save = async (next: readonly TestStep[]): Promise<boolean> => {
    const taken = await send({ steps: [...next] }, (id, body) => defineSteps(token, id, body));
    if (taken) onDefined();
    return taken;
  };
  const wanted = Steps.safeParse([...steps, { cause, effect }]).data;
  const add = async (event: Event) => {
    event.preventDefault();
    if (!wanted || !(await save(wanted))) return;
    setCause('');
    setEffect('');
  };
  return (
    <details class="more site-steps">
      <summary>Cause and effect: steps of every visit</summary>
      <ul>
        {STEPS_OF_EVERY_VISIT.map((step) => (
          <li key={step.cause}>
            <strong>{step.cause}</strong>: {step.effect}
          </li>
        ))}
        {steps.map((step) => (
          <li key={step.cause}>
            <strong>{step.cause}</strong>: {step.effect}{' '}
            <button
              type="button"
              class="button"
              disabled={busy}
              onClick={() => save(steps.filter((each) => each !== step))}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
      {steps.length < MAX_SITE_STEPS && (
        <form class="site-steps-form" onSubmit={add}>
          <Field label="What is done" value={cause} maxLength={160} onInput={setCause} />
          <Field label="What must happen" value={effect} maxLength={160} onInput={setEffect} />
          <button type="submit" class="button" disabled={busy || !wanted}>
            Add the step
          </button>
        </form>
      )}
      <p class="hint">{STEPS_SAVED}</p>
      <Failure text={failure} />
    </details>
  );
}

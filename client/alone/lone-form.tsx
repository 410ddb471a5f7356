import { useState } from 'preact/hooks';
import { LONE, MINUTES_WRONG } from '../../src/phrases/lone-check.ts';
import { browserStorage } from '../browser/storage.ts';
import { keepLoneWorker, LoneWorker, loneWorker } from '../saved/lone-worker.ts';
import { Field } from '../ui/field.tsx';

/** What the phone does when nothing is heard from the person alone. Kept with every letter that is typed. */
export function LoneForm() {
  const [typed, setTyped] = useState(() => {
    const { minutes, ...rest } = loneWorker(browserStorage);
    return { minutes: minutes === undefined ? '' : String(minutes), ...rest };
  });
  const parsed = parse(typed);
  const put = (patch: Partial<typeof typed>) => {
    const next = { ...typed, ...patch };
    setTyped(next);
    const lone = parse(next);
    if (lone) keepLoneWorker(browserStorage, lone);
  };
  return (
    <section class="card lone">
      <h2>{LONE.heading}</h2>
      <p>{LONE.what}</p>
      <Field
        label={LONE.minutes}
        value={typed.minutes}
        error={parsed ? undefined : MINUTES_WRONG}
        hint={LONE.off}
        inputMode="decimal"
        onInput={(minutes) => put({ minutes })}
      />
      <Field
        label={LONE.agreed}
        value={typed.agreed}
        hint={LONE.agreedHint}
        maxLength={200}
        onInput={(agreed) => put({ agreed })}
      />
      <Field
        label={LONE.number}
        value={typed.number}
        hint={LONE.kept}
        maxLength={30}
        onInput={(number) => put({ number })}
      />
    </section>
  );
}

function parse({
  minutes,
  ...rest
}: Record<'minutes' | 'agreed' | 'number', string>): LoneWorker | undefined {
  const text = minutes.trim().replace(',', '.');
  return LoneWorker.safeParse({ ...rest, ...(text !== '' && { minutes: Number(text) }) }).data;
}

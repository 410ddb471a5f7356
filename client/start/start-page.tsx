import { useRef, useState } from 'preact/hooks';
import { type AloneWay, hasNoNumbers, isOnePhone } from '../../src/model/alone.ts';
import { INDICATOR, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { aloneStartText } from '../../src/phrases/alone.ts';
import { meterText } from '../../src/phrases/profiles.ts';
import { NO_ANSWER } from '../../src/phrases/requests.ts';
import { LENGTH_NAMES } from '../../src/phrases/units-chosen.ts';
import { openJob } from '../browser/job-requests.ts';
import { ApiError } from '../browser/requests.ts';
import { browserStorage } from '../browser/storage.ts';
import { BeginHere } from '../here/begin-here.tsx';
import { useAdmission } from '../people/admission.tsx';
import { PersonForm } from '../people/person-form.tsx';
import { sitterOf } from '../people/sitter.ts';
import { usePerson } from '../people/use-person.ts';
import { AdjusterForm } from '../profiles/adjuster-form.tsx';
import { MeterForm, Speed } from '../profiles/meter-form.tsx';
import { type Draft, type Errors, meterDraft, newDraft, parseDraft } from '../profiles/profile-draft.ts';
import { ownMeters, rememberMeter } from '../profiles/saved-profiles.ts';
import { ownUnits, rememberUnits } from '../profiles/saved-units.ts';
import { UnitsChoice } from '../profiles/units-choice.tsx';
import { savedSeat, saveSeat } from '../saved/saved-seats.ts';
import { Failure } from '../ui/failure.tsx';
import { Choice, Field } from '../ui/field.tsx';
import { showFirstError } from '../ui/first-error.ts';
import { Foot } from '../ui/foot.tsx';
import { Page } from '../ui/page.tsx';

/** At the panel: names the job and opens it. `onOpened` is called when this phone keeps its seat. */
export function StartPage({ alone, onOpened }: { alone?: AloneWay | undefined; onOpened: () => void }) {
  const isIndicator = hasNoNumbers(alone);
  const [meters] = useState(() =>
    isIndicator ? [INDICATOR] : [...ownMeters(browserStorage), ...NEUTRAL_METERS],
  );
  const [chosen, setChosen] = useState('0');
  const [draft, setDraft] = useState<Draft>(() => newDraft(meters[0], ownUnits(browserStorage)));
  const [errors, setErrors] = useState<Errors>({});
  const [failure, setFailure] = useState<string>();
  const [busy, setBusy] = useState(false);
  const [noServer, setNoServer] = useState(false);
  const [left] = useState(() => savedSeat(browserStorage, 'panel'));
  const who = usePerson();
  const formElement = useRef<HTMLFormElement>(null);

  const put = (patch: Partial<Draft>) => {
    const next = { ...draft, ...patch };
    setDraft(next);
    // After a first try with errors, each field shows at once whether it is right now.
    if (Object.keys(errors).length > 0) setErrors(errorsOf(next));
  };

  const choose = (index: string) => {
    const meter = meters[Number(index)];
    setChosen(index);
    if (meter) put({ meter: meterDraft(meter) });
  };

  const admission = useAdmission(() => setFailure(undefined));

  const submit = async (event: Event) => {
    event.preventDefault();
    if (busy) return;
    setFailure(undefined);
    setNoServer(false);
    const form = typed();
    if (!form) return;
    setBusy(true);
    try {
      const { setup, sitter } = form;
      const { job, token, watch } = await admission.around(() => openJob({ setup, ...sitter }));
      if (!isIndicator) rememberMeter(browserStorage, setup.meter);
      rememberUnits(browserStorage, draft.units);
      saveSeat(browserStorage, { seat: 'panel', job, token, watch, title: `${setup.site}, ${setup.pair}` });
      onOpened();
    } catch (error) {
      setBusy(false);
      setFailure(error instanceof ApiError ? error.message : `The job could not be opened: ${error}`);
      setNoServer(isOnePhone(alone) && error instanceof ApiError && error.message === NO_ANSWER);
    }
  };

  /** What the form says; undefined where something in it is wrong, which it then shows. */
  const typed = () => {
    const parsed = parseDraft(draft);
    setErrors(errorsOf(draft));
    if (parsed.kind === 'wrong') {
      showFirstError(formElement.current);
      return undefined;
    }
    const setup = { ...parsed.setup, ...(alone && { alone }) };
    return { setup, sitter: sitterOf(who.typed) };
  };

  const wrongInMeter = Object.keys(errors).some((path) => path.startsWith('meter.'));
  const wrongInAdjusters = Object.keys(errors).some((path) => path.startsWith('adjusters.'));

  return (
    <Page>
      <form class="card start" ref={formElement} onSubmit={submit} noValidate>
        <h1>What will you align?</h1>
        {alone && <p class="hint">{aloneStartText(alone)}</p>}
        <Field
          label="Site"
          value={draft.site}
          error={errors.site}
          placeholder="Tamsin Quay, hall 3"
          maxLength={80}
          onInput={(site) => put({ site })}
        />
        <Field
          label="Beam pair"
          value={draft.pair}
          error={errors.pair}
          placeholder="B2"
          maxLength={80}
          onInput={(pair) => put({ pair })}
        />
        <Field
          label="Emitter to receiver"
          unit={LENGTH_NAMES[draft.units.length]}
          value={draft.pathLength}
          error={errors.pathLength}
          hint="If you know it."
          inputMode="decimal"
          onInput={(pathLength) => put({ pathLength })}
        />
        <UnitsChoice units={draft.units} onInput={(units) => put({ units })} />
        {isIndicator ? (
          <Speed meter={draft.meter} errors={errors} isIndicator onInput={(meter) => put({ meter })} />
        ) : (
          <>
            <Choice
              label="Meter"
              value={chosen}
              options={meters.map((meter, i) => ({ value: String(i), label: meter.name }))}
              hint={meterText(draft.meter)}
              onInput={choose}
            />
            <MeterForm
              meter={draft.meter}
              errors={errors}
              open={wrongInMeter}
              onInput={(meter) => put({ meter })}
            />
          </>
        )}
        <AdjusterForm
          adjusters={draft.adjusters}
          errors={errors}
          open={wrongInAdjusters}
          onInput={(adjusters) => put({ adjusters })}
        />
        <PersonForm typed={who.typed} onInput={who.put} />
        {left && <p class="hint">With a new job this phone leaves {left.title ?? 'the job it is in'}.</p>}
        {admission.field}
        {noServer && <BeginHere typed={typed} onBegun={onOpened} />}
        <Foot>
          <Failure text={failure} />
          <button type="submit" class="button main" disabled={busy}>
            {busy ? 'Opening the job' : 'Open the job'}
          </button>
        </Foot>
      </form>
    </Page>
  );
}

const errorsOf = (draft: Draft): Errors => {
  const parsed = parseDraft(draft);
  return parsed.kind === 'wrong' ? parsed.errors : {};
};

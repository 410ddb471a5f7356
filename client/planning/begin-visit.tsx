import { useState } from 'preact/hooks';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { planWarnings, WARNINGS_TITLE } from '../../src/phrases/plan-warnings.ts';
import { VISIT_HINTS, VISIT_KINDS } from '../../src/phrases/visits.ts';
import type { PairRow, SiteView } from '../../src/protocol/site.ts';
import { go, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { useSend } from '../browser/use-send.ts';
import { PersonForm } from '../people/person-form.tsx';
import { sitterOf } from '../people/sitter.ts';
import { usePerson } from '../people/use-person.ts';
import { ownMeters } from '../profiles/saved-profiles.ts';
import { savedSeat, saveSeat } from '../saved/saved-seats.ts';
import { beginVisit } from '../site/requests.ts';
import { Failure } from '../ui/failure.tsx';
import { Choice } from '../ui/field.tsx';
import { WarningList } from '../ui/warning-list.tsx';

type VisitScope = 'commissioning' | 'periodic';
const SCOPES: { value: VisitScope; label: string }[] = [
  { value: 'commissioning', label: VISIT_KINDS.commissioning },
  { value: 'periodic', label: VISIT_KINDS.periodic },
];

/** Makes this device the panel phone of a new visit, with the plan as it is now. */
export function BeginVisit({ token, view, row }: { token: string; view: SiteView; row: PairRow }) {
  const { plan, visits, online } = row;
  const [meters] = useState(() => [...ownMeters(browserStorage), ...NEUTRAL_METERS]);
  const [chosen, setChosen] = useState('0');
  const [scope, setScope] = useState<VisitScope>('commissioning');
  const [left] = useState(() => savedSeat(browserStorage, 'panel'));
  const who = usePerson();
  const { busy, failure, send } = useSend();
  const meter = plan.meter ?? meters[Number(chosen)];
  // What the check says of the plan as the visit will begin with it: with the meter that stands in.
  const warnings = planWarnings(
    { adjusters: NEUTRAL_ADJUSTERS, ...plan, ...(meter && { meter }) },
    view.code,
    view.units,
  );
  const begin = () =>
    send(
      {
        pair: plan.id,
        scope,
        ...sitterOf(who.typed),
        ...(!plan.meter && meter && { meter }),
        ...(!plan.adjusters && { adjusters: NEUTRAL_ADJUSTERS }),
      },
      async (id, body) => {
        const { job, token: seatToken, watch } = await beginVisit(token, id, body);
        saveSeat(browserStorage, {
          seat: 'panel',
          job,
          token: seatToken,
          watch,
          title: `${view.site}, ${plan.name}`,
          site: token,
        });
        go(linkTo('panel', {}));
      },
    );
  const someone = online.panel || online.emitter;
  return (
    <section class="card begin-visit">
      <h2>{visits.length === 0 ? 'Are you at the panel?' : 'Another visit'}</h2>
      <p>
        This device becomes the panel phone: it reads the meter and gives the code for the phone on the
        ladder.
      </p>
      {visits.length > 0 && (
        <Choice
          label="What for"
          value={scope}
          options={SCOPES}
          hint={VISIT_HINTS[scope]}
          onInput={(value) => setScope(value as VisitScope)}
        />
      )}
      {!plan.meter && (
        <Choice
          label="Meter at the panel"
          value={chosen}
          options={meters.map(({ name }, i) => ({ value: String(i), label: name }))}
          onInput={setChosen}
        />
      )}
      <WarningList title={WARNINGS_TITLE} texts={warnings} />
      <PersonForm typed={who.typed} onInput={who.put} />
      {someone && <p class="failure">A crew is on this pair now. Begin only if they know about it.</p>}
      {left && <p class="hint">This device then leaves {left.title ?? 'the job it is in'}.</p>}
      <Failure text={failure} />
      <button type="button" class="button main" disabled={busy} onClick={begin}>
        {busy ? 'Starting' : 'Begin a visit here'}
      </button>
    </section>
  );
}

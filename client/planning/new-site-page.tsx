import { useState } from 'preact/hooks';
import { GUIDANCES } from '../../src/model/guidance.ts';
import { GUIDANCE_ONLY } from '../../src/phrases/plan-formulas.ts';
import { ApiError } from '../browser/requests.ts';
import { follow, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { useAdmission } from '../people/admission.tsx';
import { ownUnits, rememberUnits } from '../profiles/saved-units.ts';
import { UnitsChoice } from '../profiles/units-choice.tsx';
import { type SavedSite, saveSite } from '../saved/saved-sites.ts';
import { openSite } from '../site/requests.ts';
import { Failure } from '../ui/failure.tsx';
import { Choice, Field } from '../ui/field.tsx';
import { Foot } from '../ui/foot.tsx';
import { Page } from '../ui/page.tsx';
import { ShareLink } from '../ui/share-link.tsx';

const NONE = 'none';

/** Opens a site. The desk's token stays on this device. The read-only one is shown, to give to others. */
export function NewSitePage() {
  const [site, setSite] = useState('');
  const [code, setCode] = useState('0');
  const [units, setUnits] = useState(() => ownUnits(browserStorage));
  const [wrong, setWrong] = useState<string>();
  const [failure, setFailure] = useState<string>();
  const [busy, setBusy] = useState(false);
  const [opened, setOpened] = useState<SavedSite & { kept: boolean }>();
  const guidance = GUIDANCES[Number(code)];

  const admission = useAdmission(() => setFailure(undefined));

  const submit = async (event: Event) => {
    event.preventDefault();
    const name = site.trim();
    setWrong(name === '' ? 'Enter a name for the site.' : undefined);
    if (name === '' || busy) return;
    setBusy(true);
    setFailure(undefined);
    try {
      const { desk, watch } = await admission.around(() =>
        openSite({ site: name, ...(guidance && { code: guidance }), units }),
      );
      rememberUnits(browserStorage, units);
      const saved = { token: desk, site: name, watch };
      setOpened({ ...saved, kept: saveSite(browserStorage, saved) });
    } catch (error) {
      setFailure(error instanceof ApiError ? error.message : `The site could not be opened: ${error}`);
    } finally {
      setBusy(false);
    }
  };

  if (opened) return <Opened {...opened} />;
  return (
    <Page>
      <form class="card" onSubmit={submit} noValidate>
        <h1>Open a site</h1>
        <p>For all the beam pairs of a building: their plans, every visit, and the records to sign.</p>
        <Field
          label="Site"
          value={site}
          error={wrong}
          placeholder="Tamsin Quay"
          maxLength={80}
          onInput={setSite}
        />
        <Choice
          label="Guidance for the plan check"
          value={code}
          options={[
            ...GUIDANCES.map(({ name }, i) => ({ value: String(i), label: name })),
            { value: NONE, label: 'none' },
          ]}
          hint={guidance ? `${guidance.source}: ${GUIDANCE_ONLY}.` : 'Distances are then not checked.'}
          onInput={setCode}
        />
        <UnitsChoice units={units} onInput={setUnits} />
        {admission.field}
        <Foot>
          <Failure text={failure} />
          <button type="submit" class="button main" disabled={busy}>
            {busy ? 'Opening the site' : 'Open the site'}
          </button>
        </Foot>
      </form>
    </Page>
  );
}

function Opened({ token, site, watch, kept }: SavedSite & { kept: boolean }) {
  return (
    <Page>
      <section class="card">
        <h1>{site} is open</h1>
        <p>
          {kept
            ? 'This device keeps the key of the desk: it can plan, begin visits and sign.'
            : 'This browser keeps nothing. Keep the link of the desk yourself. Without it the site cannot be changed again.'}
        </p>
        <a class="button main" href={linkTo('board', { token })} onClick={follow}>
          To the board
        </a>
        <h2>For a supervisor: read only</h2>
        {watch && <ShareLink label="Link to the board" to={linkTo('board', { token: watch })} />}
        <details class="more" open={!kept}>
          <summary>For another device of the desk</summary>
          <p class="hint">Anyone with this link can plan, begin visits and sign. You cannot cancel it.</p>
          <ShareLink label="Link of the desk" to={linkTo('board', { token })} />
        </details>
      </section>
    </Page>
  );
}

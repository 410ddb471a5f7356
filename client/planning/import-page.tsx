import { useEffect, useState } from 'preact/hooks';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import type { LengthUnit } from '../../src/model/units.ts';
import { csvFaultText } from '../../src/phrases/table-faults.ts';
import type { SiteView } from '../../src/protocol/site.ts';
import { pairsToCsv, TEMPLATE } from '../../src/site/pair-table.ts';
import { browserStorage } from '../browser/storage.ts';
import { ownMeters } from '../profiles/saved-profiles.ts';
import { liveRows } from '../site/live-rows.ts';
import { SiteFrame } from '../site/site-frame.tsx';
import { SiteMasthead } from '../site/site-masthead.tsx';
import { useSite } from '../site/use-site.ts';
import { download, fileName } from '../ui/download.ts';
import { NotYet } from '../ui/not-yet.tsx';
import { Preview } from './import-preview.tsx';
import { type ReadTable, readTable, type Source, sourceOf } from './read-file.ts';
import './planning.css';

/** Imports pairs from a table. They are shown first, and sent only when every row is right. */
export function ImportPage({ token }: { token: string }) {
  const site = useSite(token);
  if (!site.value) return <NotYet what="site" read={site} />;
  return <Import token={token} view={site.value} />;
}

/** With the mark that tells spreadsheets it is UTF-8. */
const asCsv = (pairs: readonly PairPlan[], unit: LengthUnit): Blob =>
  new Blob(['\uFEFF', pairsToCsv(pairs, unit)], { type: 'text/csv;charset=utf-8' });

const asXlsx = async (pairs: readonly PairPlan[], unit: LengthUnit): Promise<Blob> =>
  (await import('../../src/site/pair-workbook.ts')).pairsToXlsx(pairs, unit);

interface DownloadsProps {
  what: string;
  pairs: readonly PairPlan[];
  unit: LengthUnit;
  /** Of the file, without its ending. */
  name: string;
}

/** The same table in both forms. */
const Downloads = ({ what, pairs, unit, name }: DownloadsProps) => (
  <>
    <button
      type="button"
      class="button"
      onClick={async () => download(await asXlsx(pairs, unit), `${name}.xlsx`)}
    >
      {what} (XLSX)
    </button>
    <button type="button" class="button" onClick={() => download(asCsv(pairs, unit), `${name}.csv`)}>
      {what} (CSV)
    </button>
  </>
);

function Import({ token, view }: { token: string; view: SiteView }) {
  const [source, setSource] = useState<Source>();
  const [emptyClears, setEmptyClears] = useState(false);
  const [read, setRead] = useState<ReadTable>();
  useEffect(() => {
    let current = true;
    if (!source) setRead(undefined);
    else {
      readTable(source, {
        profiles: {
          meters: [...ownMeters(browserStorage), ...NEUTRAL_METERS],
          adjusters: [NEUTRAL_ADJUSTERS],
        },
        onSite: view.pairs.map(({ plan }) => plan),
        emptyClears,
      }).then((table) => current && setRead(table));
    }
    return () => {
      current = false;
    };
  }, [source, view, emptyClears]);
  const unit = view.units?.length ?? 'm';
  const plans = liveRows(view.pairs).map(({ plan }) => plan);
  const take = (next: Source | undefined) => {
    setEmptyClears(false);
    setSource(next);
  };
  return (
    <SiteFrame masthead={<SiteMasthead token={token} site={view.site} />} head={<h1>Pairs from a table</h1>}>
      <section class="card">
        <ol class="steps">
          <li>
            Download the template. Fill in one pair in each row. Save it as XLSX or CSV.
            <div class="site-ways">
              <Downloads what="Template" pairs={TEMPLATE} unit={unit} name="pairs" />
              {plans.length > 0 && (
                <Downloads
                  what="The pairs as they are now"
                  pairs={plans}
                  unit={unit}
                  name={fileName(view.site, 'pairs')}
                />
              )}
            </div>
          </li>
          <li>
            <label class="field">
              Choose the file
              <input
                type="file"
                accept=".xlsx,.csv,.tsv,.txt,text/csv"
                onChange={async (event) => {
                  const [file] = event.currentTarget.files ?? [];
                  if (file) take(await sourceOf(file));
                }}
              />
            </label>
            <details class="more">
              <summary>Or paste the table</summary>
              <textarea
                rows={6}
                aria-label="The table as text"
                value={
                  source?.file === undefined && source?.content.kind === 'text' ? source.content.text : ''
                }
                onInput={(event) => {
                  const text = event.currentTarget.value;
                  take(text.trim() === '' ? undefined : { content: { kind: 'text', text } });
                }}
              />
            </details>
          </li>
        </ol>
      </section>
      {read && !read.ok && <Faults read={read} name={source?.file} />}
      {read?.ok && (
        <Preview
          token={token}
          view={view}
          table={read}
          emptyClears={emptyClears}
          onEmptyClears={setEmptyClears}
        />
      )}
    </SiteFrame>
  );
}

const MOST_SHOWN = 100;

function Faults({ read, name }: { read: Extract<ReadTable, { ok: false }>; name: string | undefined }) {
  const { faults } = read;
  return (
    <section class="card faults" role="alert">
      <h2>Nothing was imported</h2>
      <p>
        {faults.length === 1 ? 'One thing is' : `${faults.length} things are`} wrong in {name ?? 'the table'}.
        Correct it and choose it again.
      </p>
      <ul>
        {faults.slice(0, MOST_SHOWN).map((fault) => (
          <li key={csvFaultText(fault)}>{csvFaultText(fault)}</li>
        ))}
      </ul>
      {faults.length > MOST_SHOWN && <p>And {faults.length - MOST_SHOWN} more.</p>}
    </section>
  );
}

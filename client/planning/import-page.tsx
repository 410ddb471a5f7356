import { useState } from 'preact/hooks';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { csvFaultText } from '../../src/phrases/table-faults.ts';
import type { SiteView } from '../../src/protocol/site.ts';
import { csvTemplate, pairsToCsv, type ReadPairs, readPairs } from '../../src/site/pair-table.ts';
import { go, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { ownMeters } from '../profiles/saved-profiles.ts';
import { liveRows } from '../site/live-rows.ts';
import { planPairs } from '../site/requests.ts';
import { SiteFrame } from '../site/site-frame.tsx';
import { SiteMasthead } from '../site/site-masthead.tsx';
import { useSend } from '../site/use-send.ts';
import { useSite } from '../site/use-site.ts';
import { download, fileName } from '../ui/download.ts';
import { Failure } from '../ui/failure.tsx';
import { NotYet } from '../ui/not-yet.tsx';
import { type Change, changesBy } from './import-changes.ts';
import './planning.css';

/** Imports pairs from a table. They are shown first, and sent only when every row is right. */
export function ImportPage({ token }: { token: string }) {
  const site = useSite(token);
  if (!site.value) return <NotYet what="site" read={site} />;
  return <Import token={token} view={site.value} />;
}

const asCsv = (text: string): Blob => new Blob([text], { type: 'text/csv;charset=utf-8' });

function Import({ token, view }: { token: string; view: SiteView }) {
  const [name, setName] = useState<string>();
  const [text, setText] = useState('');
  const read = text.trim() === '' ? undefined : readTable(text);
  const plans = liveRows(view.pairs).map(({ plan }) => plan);
  const take = async (file: File | undefined) => {
    if (!file) return;
    setName(file.name);
    setText(await file.text());
  };
  return (
    <SiteFrame masthead={<SiteMasthead token={token} site={view.site} />} head={<h1>Pairs from a table</h1>}>
      <section class="card">
        <ol class="steps">
          <li>
            Download the template. Fill in one pair in each row. Save it as CSV (UTF-8).
            <div class="site-ways">
              <button
                type="button"
                class="button"
                onClick={() => download(asCsv(csvTemplate()), 'pairs.csv')}
              >
                Template
              </button>
              {plans.length > 0 && (
                <button
                  type="button"
                  class="button"
                  onClick={() => download(asCsv(pairsToCsv(plans)), `${fileName(view.site, 'pairs')}.csv`)}
                >
                  The pairs as they are now
                </button>
              )}
            </div>
          </li>
          <li>
            <label class="field">
              Choose the file
              <input
                type="file"
                accept=".csv,.tsv,.txt,text/csv"
                onChange={(event) => take(event.currentTarget.files?.[0])}
              />
            </label>
            <details class="more">
              <summary>Or paste the table</summary>
              <textarea
                rows={6}
                aria-label="The table as text"
                value={text}
                onInput={(event) => {
                  setName(undefined);
                  setText(event.currentTarget.value);
                }}
              />
            </details>
          </li>
        </ol>
      </section>
      {read && !read.ok && <Faults read={read} name={name} />}
      {text.includes(NOT_UTF_8) && (
        <p class="failure" role="alert">
          Some letters of this file cannot be read. Save it again as CSV in UTF-8.
        </p>
      )}
      {read?.ok && <Preview token={token} pairs={read.pairs} changes={changesBy(read.pairs, view.pairs)} />}
    </SiteFrame>
  );
}

/** In a text that is not UTF-8, every accented letter becomes this. */
const NOT_UTF_8 = '\uFFFD';

const readTable = (text: string): ReadPairs =>
  readPairs(text, {
    meters: [...ownMeters(browserStorage), ...NEUTRAL_METERS],
    adjusters: [NEUTRAL_ADJUSTERS],
  });

const MOST_SHOWN = 100;

function Faults({ read, name }: { read: Extract<ReadPairs, { ok: false }>; name: string | undefined }) {
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

const CHANGE_WORDS: Record<Change, string> = {
  new: 'new',
  changed: 'with a new plan',
  same: 'unchanged',
  back: 'removed before, back again',
};

interface PreviewProps {
  token: string;
  pairs: readonly PairPlan[];
  changes: ReadonlyMap<string, Change>;
}

function Preview({ token, pairs, changes }: PreviewProps) {
  const { busy, failure, send } = useSend();
  const sent = pairs.filter(({ id }) => changes.get(id) !== 'same');
  const submit = async () => {
    if (await send({ pairs: sent }, (id, body) => planPairs(token, id, body))) go(linkTo('board', { token }));
  };
  const count = (change: Change): number => pairs.filter(({ id }) => changes.get(id) === change).length;
  return (
    <section class="card preview">
      <h2>Every row is right</h2>
      <p>
        {(Object.keys(CHANGE_WORDS) as Change[])
          .filter((change) => count(change) > 0)
          .map((change) => `${count(change)} ${CHANGE_WORDS[change]}`)
          .join('; ')}
        . Nothing is sent yet.
      </p>
      <div class="preview-table">
        <table>
          <thead class="preview-head">
            <tr>
              <th>Id</th>
              <th>Name</th>
              <th>Zone</th>
              <th>Path</th>
              <th>Alarm at</th>
              <th>Meter</th>
              <th>Change</th>
            </tr>
          </thead>
          <tbody>
            {pairs.map((plan) => (
              <tr key={plan.id}>
                <th scope="row">{plan.id}</th>
                <td>{plan.name}</td>
                <td>{plan.zone}</td>
                <td>{plan.pathLength !== undefined && `${plan.pathLength} m`}</td>
                <td>{plan.alarmThreshold && `${plan.alarmThreshold.value} ${plan.alarmThreshold.unit}`}</td>
                <td>{plan.meter?.name}</td>
                <td>{CHANGE_WORDS[changes.get(plan.id) ?? 'new']}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <Failure text={failure} />
      <button type="button" class="button main" disabled={busy || sent.length === 0} onClick={submit}>
        {sent.length === 0
          ? 'Nothing new'
          : busy
            ? 'Sending'
            : `Import ${sent.length} ${sent.length === 1 ? 'pair' : 'pairs'}`}
      </button>
    </section>
  );
}

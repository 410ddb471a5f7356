import { useState } from 'preact/hooks';
import { MAX_PAIRS } from '../../src/model/pair-plan.ts';
import type { LengthUnit } from '../../src/model/units.ts';
import { planWarnings, WARNINGS_TITLE } from '../../src/phrases/plan-warnings.ts';
import { pairsWithWarnings } from '../../src/phrases/plan-warnings-desk.ts';
import { changeText, emptyCellsText, overLimitText } from '../../src/phrases/table-preview.ts';
import type { SiteView } from '../../src/protocol/site.ts';
import { headerIn, isLengthColumn } from '../../src/site/pair-columns.ts';
import type { EmptyCells } from '../../src/site/pair-table.ts';
import { changesBy, overLimit, type PairChange } from '../../src/site/plan-changes.ts';
import { go, linkTo } from '../browser/route.ts';
import { useSend } from '../browser/use-send.ts';
import { planPairs } from '../site/requests.ts';
import { Failure } from '../ui/failure.tsx';
import { WarningList } from '../ui/warning-list.tsx';
import type { ReadAs, ReadTable } from './read-file.ts';

const KIND_WORDS: Record<PairChange['kind'], string> = {
  new: 'new',
  changed: 'with a new plan',
  same: 'unchanged',
  back: 'removed before, back again',
};
const KINDS = Object.keys(KIND_WORDS) as PairChange['kind'][];

/** So many pairs are shown at first: a phone takes long to draw thousands. */
const FIRST_SHOWN = 100;

interface PreviewProps {
  token: string;
  view: SiteView;
  table: Extract<ReadTable, { ok: true }>;
  /** Whether an empty cell takes away what the plan has. */
  emptyClears: boolean;
  onEmptyClears: (clears: boolean) => void;
}

/** What a table would change, field by field. Nothing is sent before the button is pressed. */
export function Preview({ token, view, table, emptyClears, onEmptyClears }: PreviewProps) {
  const { busy, failure, send } = useSend();
  const [all, setAll] = useState(false);
  const changes = changesBy(table.pairs, view.pairs);
  const warned = new Map(
    table.pairs.map((plan) => [plan.id, planWarnings(plan, view.code, view.units)] as const),
  );
  const warnings = (change: PairChange) => warned.get(change.plan.id) ?? [];
  const sent = changes
    .filter(({ kind }) => kind !== 'same')
    // Where not all are shown, those with a warning are.
    .toSorted((a, b) => Number(warnings(b).length > 0) - Number(warnings(a).length > 0));
  const troubled = [...warned.values()].filter((texts) => texts.length > 0).length;
  const over = overLimit(table.pairs, view.pairs);
  const submit = async () => {
    const pairs = sent.map(({ plan }) => plan);
    if (await send({ pairs }, (id, body) => planPairs(token, id, body))) go(linkTo('board', { token }));
  };
  const unit = view.units?.length ?? 'm';
  const count = (kind: PairChange['kind']): number => changes.filter((each) => each.kind === kind).length;
  const shown = all ? sent : sent.slice(0, FIRST_SHOWN);
  return (
    <section class="card preview">
      <h2>Every row is right</h2>
      <p>
        {KINDS.filter((kind) => count(kind) > 0)
          .map((kind) => `${count(kind)} ${KIND_WORDS[kind]}`)
          .join('; ')}
        . Nothing is sent yet.
      </p>
      <p class={troubled > 0 ? 'failure' : 'hint'}>{pairsWithWarnings(troubled, table.pairs.length)}</p>
      {table.readAs && <ReadAsText table={table} readAs={table.readAs} />}
      <p class="hint">
        Columns that the table does not have stay as they are on the site. A site has at most {MAX_PAIRS}{' '}
        pairs.
      </p>
      <EmptyChoice empty={table.empty} clears={emptyClears} onInput={onEmptyClears} />
      {over !== undefined && <Failure text={overLimitText(over)} />}
      {shown.length > 0 && (
        <ul class="changes">
          {shown.map((change) => (
            <Change key={change.plan.id} change={change} unit={unit} warnings={warnings(change)} />
          ))}
        </ul>
      )}
      {shown.length < sent.length && (
        <button type="button" class="button" onClick={() => setAll(true)}>
          Show the other {sent.length - shown.length}
        </button>
      )}
      <Failure text={failure} />
      <button
        type="button"
        class="button main"
        disabled={busy || sent.length === 0 || over !== undefined}
        onClick={submit}
      >
        {sent.length === 0
          ? 'Nothing new'
          : busy
            ? 'Sending'
            : `Import ${sent.length} ${sent.length === 1 ? 'pair' : 'pairs'}`}
      </button>
    </section>
  );
}

function ReadAsText({ table, readAs }: { table: PreviewProps['table']; readAs: ReadAs }) {
  const { samples } = table;
  return (
    <p class={readAs === 'Windows-1252' ? 'failure' : 'hint'}>
      {readAs === 'XLSX' ? 'The first sheet of the workbook was read.' : `The file was read as ${readAs}.`}{' '}
      {samples.length > 0 && `Check that these names are right: ${samples.join('; ')}`}
    </p>
  );
}

interface EmptyChoiceProps {
  empty: readonly EmptyCells[];
  clears: boolean;
  onInput: (clears: boolean) => void;
}

function EmptyChoice({ empty, clears, onInput }: EmptyChoiceProps) {
  const cells = empty.reduce((sum, { columns }) => sum + columns.length, 0);
  if (cells === 0) return null;
  return (
    <div class="empty-cells">
      <p>{emptyCellsText(cells, clears)}</p>
      <label class="check">
        <input type="checkbox" checked={clears} onChange={(event) => onInput(event.currentTarget.checked)} />
        Take away what the plan has there
      </label>
    </div>
  );
}

interface ChangeProps {
  change: PairChange;
  unit: LengthUnit;
  warnings: readonly string[];
}

const Change = ({ change: { plan, kind, fields }, unit, warnings }: ChangeProps) => (
  <li>
    <h3>
      {plan.id} <span class="hint">{KIND_WORDS[kind]}</span>
    </h3>
    <WarningList title={WARNINGS_TITLE} texts={warnings} />
    <dl>
      {fields.map((field) => (
        <div key={field.column} class={field.to === undefined ? 'taken-away' : ''}>
          <dt>{headerIn(field.column, unit)}</dt>
          <dd>{changeText(field.from, field.to, isLengthColumn(field.column) ? unit : undefined)}</dd>
        </div>
      ))}
    </dl>
  </li>
);

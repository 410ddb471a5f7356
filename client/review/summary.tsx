import type { ComponentChildren } from 'preact';
import { type Series, topOf } from '../../src/log/series.ts';
import { hasNoNumbers } from '../../src/model/alone.ts';
import type { Seq } from '../../src/model/ids.ts';
import type { MeterProfile } from '../../src/model/profile.ts';
import type { Axis } from '../../src/model/turns.ts';
import { gainChange } from '../../src/phrases/gain.ts';
import { BAND_NOT_READ } from '../../src/phrases/looking.ts';
import { personText } from '../../src/phrases/people.ts';
import { positionText } from '../../src/phrases/position.ts';
import { FINAL_AS, readingWithUnit } from '../../src/phrases/readings.ts';
import {
  ACCEPTED,
  ACCEPTED_BY_OVERRIDE,
  HOW_FAR,
  headingText,
  ON_TRENDS,
} from '../../src/phrases/record-heading.ts';
import { lengthText, shownFor } from '../../src/phrases/units.ts';
import type { Heading } from '../../src/record/heading.ts';
import type { Count } from '../../src/record/overview.ts';
import { clock, day, duration, timeZone } from '../browser/times.ts';
import type { Picks } from '../charts/marker.tsx';
import { EntryLinks } from './entry-links.tsx';
import type { Recorded } from './record-worker.ts';

const SEAT = { panel: 'Panel', emitter: 'Emitter' } as const;

type Props = { record: Recorded; meter: MeterProfile } & Picks;

/** The result, before anything else: the status and the findings in one heading, and only then what was accepted. */
export const Verdict = ({
  record,
  heading,
  onPick,
}: Pick<Props, 'record'> & { heading: Heading } & Picks) => (
  <section class="verdict" aria-labelledby="summary-title">
    <div class={`status ${heading.look}`}>
      <h2 id="summary-title">{headingText(heading)}</h2>
      <Accepted record={record} onPick={onPick} />
    </div>
  </section>
);

/** What was reached: reading, peaks and time. */
export function Figures({ record, meter }: Omit<Props, 'onPick'>) {
  const { overview, series, final, state } = record;
  const { from, to } = overview;
  return (
    <section class="summary" aria-label="Figures">
      <div class="figures">
        <Figure name="Final reading">
          {final ? readingWithUnit(final.reading, meter) : 'none yet'}
          <small>
            {final && `${FINAL_AS[final.as]}; `}
            {hasNoNumbers(state.setup?.alone) ? (
              BAND_NOT_READ
            ) : (
              <>
                band {meter.bandLow} to {meter.bandHigh} {meter.unit}
              </>
            )}
          </small>
        </Figure>
        <Figure name="Highest seen at">
          {peakText(series, 'horizontal')} / {peakText(series, 'vertical')}
          <small>
            turns, horizontal / vertical; now at {positionText(series.position.horizontal)} /{' '}
            {positionText(series.position.vertical)}
          </small>
        </Figure>
        {from !== undefined && to !== undefined && (
          <Figure name="Time taken">
            {duration(to - from)}
            <small>
              {day(from)}, {clock(from, false)} to {clock(to, false)}, {timeZone(from)}
            </small>
          </Figure>
        )}
      </div>
    </section>
  );
}

/** How often, and who: for those who look closer. */
export function Counters({ record, meter, onPick }: Props) {
  const { overview, series, state } = record;
  const gain = series.gains.at(-1);
  return (
    <section class="summary counters" aria-label="Counts and people">
      <div class="details">
        <dl class="facts">
          <Fact name="Turns">{counted(overview.moves)}</Fact>
          <Fact name="Readings">{counted(overview.readings)}</Fact>
          <Fact name="Gain changes">
            {counted(overview.gainChanges)}
            {series.gains.length > 1 && gain && `, last ${gainChange(gain)}`}
          </Fact>
          <Look name="Corrections" seqs={overview.corrections} onPick={onPick} />
          <Look name="Undone" seqs={overview.undone} onPick={onPick} />
          <Look name="Asked back" seqs={overview.questions} onPick={onPick} />
          <Look name="Not heard" seqs={overview.unheard} onPick={onPick} />
          <Look name="Takeovers" seqs={overview.takeovers} onPick={onPick} />
        </dl>
        <dl class="facts people">
          {overview.people.map(({ seq, at, seat, device, takeover, person }) => (
            <Fact key={seq} name={`${SEAT[seat]}, ${clock(at, false)}`}>
              {personText(person)}, {device || 'a phone'}
              {takeover && ', took the seat over'} <EntryLinks seqs={[seq]} onPick={onPick} />
            </Fact>
          ))}
          <Fact name="Meter">{meter.name}</Fact>
          {state.setup?.pathLength !== undefined && (
            <Fact name="Path">{lengthText(state.setup.pathLength, shownFor(state.setup))}</Fact>
          )}
        </dl>
      </div>
    </section>
  );
}

/** What was accepted and when, in one line; what came of it since is among the findings. */
function Accepted({ record: { overview, state }, onPick }: Pick<Props, 'record'> & Picks) {
  const { alignment } = overview;
  if (alignment.kind !== 'accepted') return <p>{HOW_FAR[alignment.kind]}</p>;
  const { seq, at, override } = alignment;
  const onEvidence = hasNoNumbers(state.setup?.alone) ? ON_TRENDS : ACCEPTED;
  return (
    <p>
      {override ? ACCEPTED_BY_OVERRIDE : onEvidence} at {clock(at, true)}, entry{' '}
      <EntryLinks seqs={[seq]} onPick={onPick} />
    </p>
  );
}

/** The reason of an override, and what was touched since: more than a line above the findings can hold. */
export function AcceptedHow({ record, onPick }: Pick<Props, 'record'> & Picks) {
  const { alignment } = record.overview;
  if (alignment.kind !== 'accepted') return null;
  const { override, changedBy } = alignment;
  if (!override && changedBy.length === 0) return null;
  return (
    <section class="status heed" aria-label="How it was accepted">
      {override && (
        <>
          <p>
            <strong>Reason given:</strong> {override.reason}
          </p>
          <p>
            <strong>Missing:</strong>
          </p>
          <ul>
            {override.missing.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </>
      )}
      {changedBy.length > 0 && (
        <p>
          <strong>Changed since.</strong> The beam was touched after it was accepted, in{' '}
          <EntryLinks seqs={changedBy} onPick={onPick} />. The accepted reading may no longer be true.
        </p>
      )}
    </section>
  );
}

/** The position of one adjuster at its highest reading. */
function peakText(series: Series, axis: Axis): string {
  const top = topOf(series, axis);
  return top ? positionText(top.sample.position[axis]) : 'none';
}

const counted = ({ counted: n, takenBack }: Count): string =>
  takenBack > 0 ? `${n} (${takenBack} taken back)` : String(n);

const Figure = ({ name, children }: { name: string; children: ComponentChildren }) => (
  <div class="figure">
    <h3>{name}</h3>
    <p>{children}</p>
  </div>
);

const Fact = ({ name, children }: { name: string; children: ComponentChildren }) => (
  <div>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
);

/** This many are named one by one. */
const NAMED = 6;

const Look = ({ name, seqs, onPick }: { name: string; seqs: readonly Seq[] } & Picks) => (
  <Fact name={name}>
    {seqs.length === 0 ? 'none' : seqs.length} <EntryLinks seqs={seqs.slice(0, NAMED)} onPick={onPick} />
    {seqs.length > NAMED && ' and more'}
  </Fact>
);

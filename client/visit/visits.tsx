import { useEffect, useState } from 'preact/hooks';
import { checked } from '../../src/log/chain.ts';
import type { JobId } from '../../src/model/ids.ts';
import { METRES } from '../../src/model/units.ts';
import { readingWithUnit } from '../../src/phrases/readings.ts';
import { lossText, type Shown, shownFor } from '../../src/phrases/units.ts';
import type { PairRow } from '../../src/protocol/site.ts';
import { driftBetween } from '../../src/record/last-visit.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { follow, linkTo } from '../browser/route.ts';
import { moment } from '../browser/times.ts';
import type { Picks } from '../charts/marker.tsx';
import { EntryLinks } from '../review/entry-links.tsx';
import { troubledVisitsFirst } from '../site/live-rows.ts';
import { visitLog } from '../site/requests.ts';
import { SignalHistory } from '../site/signal-history.tsx';
import { StatusSign } from '../site/status-chip.tsx';

type Props = { token: string; job: JobId; row: PairRow; visit: Visit } & Picks;

/** The visits to this pair, and how the final reading has changed since the visit before. */
export function Visits({ token, job, row, visit, onPick }: Props) {
  const { visits, plan } = row;
  const earlier = visits.slice(
    0,
    visits.findIndex((visit) => visit.job === job),
  );
  const before = earlier.at(-1);
  const [first] = earlier;
  return (
    <section aria-labelledby="visits-title">
      <h2 id="visits-title">Visits to {plan.id}</h2>
      <ul class="visit-list">
        {troubledVisitsFirst(visits).map((visit) => (
          <li key={visit.job}>
            {visit.job === job ? (
              <strong>{moment(visit.at)}, this one</strong>
            ) : (
              <a href={linkTo('visit', { token, job: visit.job })} onClick={follow}>
                {moment(visit.at)}
              </a>
            )}{' '}
            <StatusSign status={visit.status} />
          </li>
        ))}
      </ul>
      <SignalHistory row={row} />
      {before && <Since key={before.job} token={token} since={before.job} visit={visit} onPick={onPick} />}
      {first && first !== before && (
        <Since key={first.job} token={token} since={first.job} isFirst visit={visit} onPick={onPick} />
      )}
      <p>
        <a class="button" href={linkTo('plan', { token, pair: plan.id })} onClick={follow}>
          Plan and plan check
        </a>
      </p>
    </section>
  );
}

/** `isFirst`: since the commissioning, not since the visit before. */
type SinceProps = { token: string; since: JobId; isFirst?: boolean; visit: Visit } & Picks;

function Since({ token, since, isFirst = false, visit, onPick }: SinceProps) {
  const named = isFirst ? 'first visit' : 'visit before';
  const [earlier, setEarlier] = useState<Visit | string>();
  useEffect(() => {
    visitLog(token, since).then(
      ({ log }) => {
        const { fault } = checked(log);
        setEarlier(fault ? `Its log fails its check at entry ${fault.seq}.` : new VisitRecord(log).visit);
      },
      (error: Error) => setEarlier(error.message),
    );
  }, [token, since]);
  if (earlier === undefined) return null;
  if (typeof earlier === 'string')
    return (
      <p role="alert">
        The {named} could not be read. {earlier}
      </p>
    );
  const drift = driftBetween(earlier, visit);
  if (!drift) {
    return (
      <p>
        Nothing to compare: the {named} ended without an acceptance, or on this visit the beam was touched
        before the first reading.
      </p>
    );
  }
  const { meter } = visit.commission.setup;
  return (
    <dl class="since">
      <dt>Accepted on the {named}</dt>
      <dd>{readingWithUnit(drift.from, meter)}</dd>
      <dt>Found on this one, before anything was touched</dt>
      <dd>
        {readingWithUnit(drift.to, meter)} <EntryLinks seqs={[drift.found.seq]} onPick={onPick} />
      </dd>
      <dt>Light lost since</dt>
      <dd>{lostText(drift.lostDb, shownFor(visit.commission.setup))}</dd>
    </dl>
  );
}

export function lostText(db: number | undefined, shown: Shown = METRES): string {
  if (db === undefined) return 'these two readings do not show it';
  if (db === Number.POSITIVE_INFINITY) return 'all of it';
  if (Math.abs(db) < 0.05) return 'none';
  return db > 0 ? lossText(db, shown, { places: 1 }) : `none: ${(-db).toFixed(1)} dB more than before`;
}

import { useState } from 'preact/hooks';
import type { Log } from '../../src/model/entry.ts';
import type { JobId, Seq } from '../../src/model/ids.ts';
import type { SiteView } from '../../src/protocol/site.ts';
import { headingOf } from '../../src/record/heading.ts';
import { isCommissioning } from '../../src/visit/commission.ts';
import { linkTo } from '../browser/route.ts';
import { KeyList } from '../keys/key-list.tsx';
import { hasBeside } from '../review/beside.ts';
import { Exports } from '../review/exports.tsx';
import { RecordView } from '../review/record-view.tsx';
import type { Shown } from '../review/replay.tsx';
import { SiteMasthead } from '../site/site-masthead.tsx';
import { StatusSign } from '../site/status-chip.tsx';
import { NotYet } from '../ui/not-yet.tsx';
import { ShareLink } from '../ui/share-link.tsx';
import { HandOverSection } from './hand-over.tsx';
import { Issues } from './issue-list.tsx';
import { PhotoSection } from './photos.tsx';
import { Tests } from './proving.tsx';
import { SignOff } from './sign-off.tsx';
import { Steps } from './steps.tsx';
import { useMoment, useVisitRecord } from './use-record.ts';
import { useSiteFindings } from './use-site-findings.ts';
import { useVisit } from './use-visit.ts';
import { VisitFindings } from './visit-findings.tsx';
import { Visits } from './visits.tsx';
import '../site/site.css';
import './visit.css';

/** The record of one visit to a pair, what to ask about it, and its signature. */
export function VisitPage({ token, job }: { token: string; job: JobId }) {
  const visit = useVisit(token, job);
  if (!visit.value) return <NotYet what="visit" read={visit} />;
  return <Visit token={token} job={job} {...visit.value} trouble={visit.trouble} look={visit.look} />;
}

interface VisitProps {
  token: string;
  job: JobId;
  view: SiteView;
  log: Log;
  trouble: string | undefined;
  look: () => void;
}

function Visit({ token, job, view, log, trouble, look }: VisitProps) {
  const record = useVisitRecord(log);
  const [shown, setShown] = useState<Shown>('all');
  const moment = useMoment(record, shown);
  const { visit, state } = record;
  const row = view.pairs.find(({ visits }) => visits.some((visit) => visit.job === job));
  const across = useSiteFindings(token, job, log.entries.length);
  const heading = headingOf(record, across.acrossSite);
  const desk = view.role === 'desk';
  /** The link to watch this visit, once it was changed here. */
  const [watch, setWatch] = useState<string>();
  const between = (pick: (seq: Seq) => void) =>
    visit && (
      <div class="visit-parts">
        <div class="visit-part">
          <VisitFindings job={job} record={record} across={across} onPick={pick} />
          {isCommissioning(visit.commission) && <Tests visit={visit} progress={record.progress} />}
        </div>
        <div class="visit-part">
          <Steps token={token} job={job} record={record} desk={desk} onWritten={look} />
          <HandOverSection token={token} job={job} record={record} desk={desk} onWritten={look} />
          <PhotoSection token={token} job={job} record={record} desk={desk} onWritten={look} />
          <SignOff
            token={token}
            log={log}
            record={record}
            across={across}
            desk={desk}
            onAnswered={look}
            onPick={pick}
          />
          <Issues token={token} job={job} issues={state.issues} desk={desk} onClosed={look} onPick={pick} />
          {desk && (
            <details class="more">
              <summary>Who has a key to this visit</summary>
              <KeyList token={token} visit={job} onExchanged={(_, next) => setWatch(next)} />
              {watch && <ShareLink label="Link to watch" to={linkTo('review', { token: watch })} />}
            </details>
          )}
          {row && <Visits token={token} job={job} row={row} visit={visit} onPick={pick} />}
        </div>
      </div>
    );
  return (
    <>
      <section class="site visit-head" aria-label="This visit">
        <SiteMasthead token={token} site={view.site} />
        {/* Calm only where the comparison with the site is known, too. */}
        {visit && (
          <StatusSign status={across.acrossSite || heading.look === 'heed' ? heading.status : undefined} />
        )}
      </section>
      <RecordView
        log={log}
        record={record}
        heading={heading}
        shown={shown}
        onShow={setShown}
        moment={moment}
        listener={{ token, visit: job }}
        trouble={trouble}
        saves={(name, print) => (
          <Exports token={token} visit={job} name={name} beside={hasBeside(state)} onPrint={print} />
        )}
      >
        {between}
      </RecordView>
    </>
  );
}

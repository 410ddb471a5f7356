import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import { toJsonLines } from '../../src/log/json-lines.ts';
import type { Log } from '../../src/model/entry.ts';
import type { JobId, Seq } from '../../src/model/ids.ts';
import type { SiteView } from '../../src/protocol/site.ts';
import { toCsv } from '../../src/record/csv-file.ts';
import { isCommissioning } from '../../src/visit/commission.ts';
import { ReportButton } from '../report/report-button.tsx';
import { useVisitRecord } from '../review/log.ts';
import { Review } from '../review/review-page.tsx';
import { visitLog } from '../site/requests.ts';
import { SiteMasthead } from '../site/site-masthead.tsx';
import { StatusSign } from '../site/status-chip.tsx';
import { type Polled, usePolled } from '../site/use-polled.ts';
import { useSite } from '../site/use-site.ts';
import { download } from '../ui/download.ts';
import { NotYet } from '../ui/not-yet.tsx';
import { Issues } from './issue-list.tsx';
import { Tests } from './proving.tsx';
import { SignOff } from './sign-off.tsx';
import { VisitFindings } from './visit-findings.tsx';
import { Visits } from './visits.tsx';
import '../site/site.css';
import './visit.css';

/** A record is some hundred kilobytes: looked at less often than the board. */
const LOOK_EVERY_MS = 5_000;

/** The record of one visit to a pair, what is to be asked of it, and its signature. */
export function VisitPage({ token, job }: { token: string; job: JobId }) {
  const site = useSite(token, job);
  const log = useVisitLog(token, job);
  if (!site.value) return <NotYet what="site" trouble={site.trouble} again={site.look} />;
  if (!log.value) return <NotYet what="log" trouble={log.trouble} again={log.look} />;
  return <Visit token={token} job={job} view={site.value} site={site} polled={log} log={log.value} />;
}

/** The log as the server holds it, handed out again only when it has grown. */
function useVisitLog(token: string, job: JobId): Polled<Log> {
  const look = useMemo(() => {
    let last: Awaited<ReturnType<typeof visitLog>> | undefined;
    return async () => {
      const came = await visitLog(token, job);
      if (came.text !== last?.text) last = came;
      return last.log;
    };
  }, [token, job]);
  return usePolled(look, LOOK_EVERY_MS);
}

interface VisitProps {
  token: string;
  job: JobId;
  view: SiteView;
  site: Polled<SiteView>;
  polled: Polled<Log>;
  log: Log;
}

function Visit({ token, job, view, site, polled, log }: VisitProps) {
  const record = useVisitRecord(log);
  const { visit, state } = record;
  const row = view.pairs.find(({ visits }) => visits.some((visit) => visit.job === job));
  const desk = view.role === 'desk';
  const again = () => {
    site.look();
    polled.look();
  };
  const between = (pick: (seq: Seq) => void) =>
    visit && (
      <div class="visit-parts">
        <div class="visit-part">
          <VisitFindings token={token} job={job} record={record} onPick={pick} />
          {isCommissioning(visit.commission) && <Tests visit={visit} progress={record.progress} />}
        </div>
        <div class="visit-part">
          <SignOff token={token} log={log} record={record} desk={desk} onAnswered={again} onPick={pick} />
          <Issues token={token} job={job} issues={state.issues} desk={desk} onClosed={again} onPick={pick} />
          {row && <Visits token={token} job={job} row={row} visit={visit} onPick={pick} />}
        </div>
      </div>
    );
  return (
    <>
      <div class="site visit-head">
        <SiteMasthead token={token} site={view.site} />
        {visit && <StatusSign status={record.status} />}
      </div>
      <Review
        log={log}
        record={record}
        trouble={polled.trouble ?? site.trouble}
        saves={(name, print) => (
          <Saves log={log} name={name} onPrint={print}>
            <ReportButton token={token} job={job} />
          </Saves>
        )}
      >
        {between}
      </Review>
    </>
  );
}

/** The log as a file, made here of what was read; or the page printed. */
function Saves({
  log,
  name,
  onPrint,
  children,
}: {
  log: Log;
  name: string;
  onPrint: () => void;
  children: ComponentChildren;
}) {
  const { entries, head } = log;
  const save = (text: string, ending: string) => download(new Blob([text]), `${name}.${ending}`);
  return (
    <div class="exports">
      <button type="button" class="button" onClick={() => save(toJsonLines(entries, head), 'jsonl')}>
        JSON Lines
      </button>
      <button type="button" class="button" onClick={() => save(toCsv(entries, head), 'csv')}>
        CSV
      </button>
      <button type="button" class="button" onClick={onPrint}>
        Print
      </button>
      {children}
    </div>
  );
}

import { COVER } from '../../src/report/report.ts';
import { NotYet } from '../ui/not-yet.tsx';
import { ReportKey } from './key.ts';
import type { LoadedReport } from './load.ts';
import { PartView } from './part.tsx';
import { PdfButton } from './pdf-button.tsx';

import { type ReportRead, useReport } from './use-report.ts';
import '../charts/charts.css';
import './report.css';

/** The report of a job, a site, or one pair of it, as it is printed. */
export function ReportPage({ token, job }: { token: string; job: string }) {
  const report = useReport(token, job);
  if (!report.value) {
    return (
      <NotYet what="report" read={report}>
        <Progress {...report.progress} />
      </NotYet>
    );
  }
  return <Report token={token} report={report.value} />;
}

const Progress = ({ done, total }: ReportRead['progress']) => (
  <label class="loading report-progress">
    Reading the logs: {done} of {total}
    <progress value={done} max={total} />
  </label>
);

function Report({ token, report }: { token: string; report: LoadedReport }) {
  const { parts } = report;
  return (
    <main class="report">
      <nav class="report-tools" aria-label="Report">
        <button type="button" class="button" onClick={() => window.print()}>
          Print
        </button>
        <PdfButton token={token} report={report} />
      </nav>
      <ReportKey.Provider value={{ token, ofSite: report.pairs !== undefined }}>
        {parts.map((part) => (
          <PartView key={part.id} part={part} hasCover={parts[0]?.id === COVER} />
        ))}
      </ReportKey.Provider>
    </main>
  );
}

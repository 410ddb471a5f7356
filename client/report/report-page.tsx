import { useEffect, useState } from 'preact/hooks';
import type { JobId } from '../../src/model/ids.ts';
import { MessagePage } from '../ui/message-page.tsx';
import { type LoadedReport, loadReport } from './load.ts';
import { PdfButton } from './pdf-button.tsx';
import { Sheet } from './sheet.tsx';
import '../charts/charts.css';
import './report.css';

type Loading =
  | { kind: 'reading'; done: number; total: number }
  | { kind: 'ready'; report: LoadedReport }
  | { kind: 'failed'; text: string };

/** The report of a job, a site, or one pair of it, as it is printed. */
export function ReportPage({ token, job }: { token: string; job: JobId }) {
  const [loading, setLoading] = useState<Loading>({ kind: 'reading', done: 0, total: 1 });
  const [attempt, setAttempt] = useState(0);
  useEffect(() => {
    let left = false;
    const unlessLeft = (next: Loading) => left || setLoading(next);
    loadReport({ token, ...(job && { job }) }, (done, total) =>
      unlessLeft({ kind: 'reading', done, total }),
    ).then(
      (report) => unlessLeft({ kind: 'ready', report }),
      (error: Error) => unlessLeft({ kind: 'failed', text: error.message }),
    );
    return () => {
      left = true;
    };
  }, [token, job, attempt]);

  switch (loading.kind) {
    case 'reading':
      return (
        <label class="loading report-progress">
          Reading the logs: {loading.done} of {loading.total}
          <progress value={loading.done} max={loading.total} />
        </label>
      );
    case 'failed':
      return (
        <MessagePage title="The report could not be made">
          <p role="alert">{loading.text}</p>
          <p>
            <button type="button" class="button main" onClick={() => setAttempt(attempt + 1)}>
              Try again
            </button>
          </p>
        </MessagePage>
      );
    case 'ready': {
      const { pages } = loading.report;
      return (
        <main class="report">
          <nav class="report-tools" aria-label="Report">
            <button type="button" class="button" onClick={() => window.print()}>
              Print
            </button>
            <PdfButton token={token} report={loading.report} />
            <p class="hint">
              {pages.length} {pages.length === 1 ? 'page' : 'pages'}, A4
            </p>
          </nav>
          {pages.map((page, index) => (
            <Sheet key={page.foot} page={page} index={index} total={pages.length} />
          ))}
        </main>
      );
    }
  }
}

import { useState } from 'preact/hooks';
import { download, fileName } from '../ui/download.ts';
import type { LoadedReport } from './load.ts';
import { jobPdf, sitePdf } from './pdf.ts';

/** Saves the report as a PDF, which the server makes from the same logs. A bar shows the progress. */
export function PdfButton({ token, report }: { token: string; report: LoadedReport }) {
  const [progress, setProgress] = useState<{ done: number; total: number }>();
  const [trouble, setTrouble] = useState<string>();
  const { pairs, parts } = report;
  const save = async () => {
    setTrouble(undefined);
    setProgress({ done: 0, total: pairs?.length || 1 });
    try {
      const blob = pairs ? await sitePdf(token, pairs, setProgress) : await jobPdf(token);
      download(blob, `${fileName(parts[0]?.title ?? 'report')}.pdf`);
    } catch (error) {
      setTrouble((error as Error).message);
    }
    setProgress(undefined);
  };
  return (
    <>
      <button type="button" class="button" disabled={progress !== undefined} onClick={save}>
        PDF
      </button>
      {progress && (
        <label class="report-progress">
          Making the PDF: {progress.done} of {progress.total}
          <progress value={progress.done} max={progress.total} />
        </label>
      )}
      {trouble && (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
    </>
  );
}

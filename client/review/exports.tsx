import { useState } from 'preact/hooks';
import { ask } from '../browser/requests.ts';
import { ReportButton } from '../report/report-button.tsx';
import { download } from '../ui/download.ts';

const FILES = [
  { label: 'JSON Lines', path: '/api/export.jsonl', ending: 'jsonl' },
  { label: 'CSV', path: '/api/export.csv', ending: 'csv' },
] as const;

/** Saves the log as a file, prints the page, or opens the report. */
export function Exports({ token, name, onPrint }: { token: string; name: string; onPrint: () => void }) {
  const [trouble, setTrouble] = useState<string>();
  const save = async ({ path, ending }: (typeof FILES)[number]) => {
    setTrouble(undefined);
    try {
      const response = await ask(path, { token });
      download(await response.blob(), `${name}.${ending}`);
    } catch (error) {
      setTrouble((error as Error).message);
    }
  };
  return (
    <div class="exports">
      {FILES.map((file) => (
        <button
          key={file.ending}
          type="button"
          class="button"
          aria-label={`Save as ${file.label}`}
          onClick={() => save(file)}
        >
          {file.label}
        </button>
      ))}
      <button type="button" class="button" onClick={onPrint}>
        Print
      </button>
      <ReportButton token={token} />
      {trouble && (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}

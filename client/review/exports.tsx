import { useState } from 'preact/hooks';
import { ReportButton } from '../report/report-button.tsx';
import { ask } from './record.ts';

const FILES = [
  { label: 'JSON Lines', path: '/api/export.jsonl', ending: 'jsonl' },
  { label: 'CSV', path: '/api/export.csv', ending: 'csv' },
] as const;

/** Saves the log as a file, prints the page, or leads to the report on one sheet. */
export function Exports({ token, name, onPrint }: { token: string; name: string; onPrint: () => void }) {
  const [trouble, setTrouble] = useState<string>();
  const save = async ({ path, ending }: (typeof FILES)[number]) => {
    setTrouble(undefined);
    try {
      const response = await ask(token, path);
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

/** Gives a file to the person at this device. */
export function download(blob: Blob, name: string): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser has taken its own hold of the blob by the next task.
  setTimeout(() => URL.revokeObjectURL(url));
}

/** "hollin-bridge-beam-3": safe in every file system. */
export const fileName = (...parts: string[]): string =>
  parts
    .join(' ')
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 80) || 'log';

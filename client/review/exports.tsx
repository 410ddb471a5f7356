import { useState } from 'preact/hooks';
import type { JobId } from '../../src/model/ids.ts';
import { ask } from '../browser/requests.ts';
import { ReportButton } from '../report/report-button.tsx';
import { download } from '../ui/download.ts';

const FILES = [
  { label: 'JSON Lines', ending: 'jsonl' },
  { label: 'CSV', ending: 'csv' },
] as const;
/** The log as JSON Lines, with what lies beside it. */
const ARCHIVE = { label: 'ZIP with photos and sound', ending: 'zip' } as const;

interface ExportsProps {
  token: string;
  /** The visit, where the token is of a site. */
  visit?: JobId;
  name: string;
  /** Whether there may be photos or sound to save with it. */
  beside: boolean;
  onPrint: () => void;
}

/** Saves the log as a file, with what the server signed of it; prints the page, or opens the report. */
export function Exports({ token, visit, name, beside, onPrint }: ExportsProps) {
  const [trouble, setTrouble] = useState<string>();
  const save = async (ending: string) => {
    setTrouble(undefined);
    const path = visit === undefined ? `/api/export.${ending}` : `/api/site/export.${ending}?job=${visit}`;
    try {
      const response = await ask(path, { token });
      download(await response.blob(), `${name}.${ending}`);
    } catch (error) {
      setTrouble((error as Error).message);
    }
  };
  return (
    <div class="exports">
      {[...FILES, ...(beside ? [ARCHIVE] : [])].map(({ label, ending }) => (
        <button
          key={ending}
          type="button"
          class="button"
          aria-label={`Save as ${label}`}
          onClick={() => save(ending)}
        >
          {label}
        </button>
      ))}
      <button type="button" class="button" onClick={onPrint}>
        Print
      </button>
      <ReportButton token={token} {...(visit !== undefined && { job: visit })} />
      {trouble && (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}

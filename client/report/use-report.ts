import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { requestFailedText } from '../../src/phrases/requests.ts';
import type { Read } from '../ui/not-yet.tsx';
import type { LoadedReport, Wanted } from './load.ts';

/** Logs read so far, and in all. */
interface Progress {
  done: number;
  total: number;
}

/** What the worker says of the report it was asked for. */
export type Told = { progress: Progress } | { value: LoadedReport } | { trouble: string };

export interface ReportRead extends Read<LoadedReport> {
  progress: Progress;
}

/** The report of what a token opens. `job`: only the pair of this visit; '' for all. */
export function useReport(token: string, job: string): ReportRead {
  const [value, setValue] = useState<LoadedReport>();
  const [trouble, setTrouble] = useState<string>();
  const [progress, setProgress] = useState<Progress>({ done: 0, total: 1 });
  const working = useRef<Worker>(undefined);
  const look = useCallback(() => {
    setTrouble(undefined);
    working.current?.terminate();
    const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
    working.current = worker;
    worker.onmessage = ({ data: told }: MessageEvent<Told>) => {
      if ('progress' in told) return setProgress(told.progress);
      worker.terminate();
      if ('value' in told) setValue(told.value);
      else setTrouble(told.trouble);
    };
    worker.onerror = ({ message }) => setTrouble(requestFailedText(message));
    worker.postMessage({ token, ...(job && { job }) } as Wanted);
  }, [token, job]);
  useEffect(() => {
    look();
    return () => working.current?.terminate();
  }, [look]);
  return { value, trouble, progress, look };
}

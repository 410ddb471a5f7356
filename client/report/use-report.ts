import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { Read } from '../ui/not-yet.tsx';
import { type LoadedReport, loadReport } from './load.ts';

export interface ReportRead extends Read<LoadedReport> {
  /** Logs read so far, and in all. */
  progress: { done: number; total: number };
}

/** The report of what a token opens. `job`: only the pair of this visit; '' for all. */
export function useReport(token: string, job: string): ReportRead {
  const [value, setValue] = useState<LoadedReport>();
  const [trouble, setTrouble] = useState<string>();
  const [progress, setProgress] = useState({ done: 0, total: 1 });
  const left = useRef(false);
  const look = useCallback(() => {
    const unlessLeft =
      <A>(set: (value: A) => void) =>
      (value: A) =>
        left.current || set(value);
    setTrouble(undefined);
    loadReport({ token, ...(job && { job }) }, unlessLeft(setProgress)).then(
      unlessLeft(setValue),
      unlessLeft((error: Error) => setTrouble(error.message)),
    );
  }, [token, job]);
  useEffect(() => {
    look();
    return () => {
      left.current = true;
    };
  }, [look]);
  return { value, trouble, progress, look };
}

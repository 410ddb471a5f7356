import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { Read } from '../ui/not-yet.tsx';

export interface Polled<T> extends Read<T> {
  /** When it was last read, this device's clock, ms. */
  at: number | undefined;
}

/** Reads again every `ms` while the page is in view. An answer to an older request than the last is left out. */
export function usePolled<T>(ask: () => Promise<T>, ms: number): Polled<T> {
  const [state, setState] = useState<Omit<Polled<T>, 'look'>>({
    value: undefined,
    at: undefined,
    trouble: undefined,
  });
  const turn = useRef(0);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const look = useCallback(async () => {
    clearTimeout(timer.current);
    turn.current += 1;
    const mine = turn.current;
    const put = (change: (state: Omit<Polled<T>, 'look'>) => Omit<Polled<T>, 'look'>) => {
      if (mine === turn.current) setState(change);
    };
    await ask().then(
      (value) => put(() => ({ value, at: Date.now(), trouble: undefined })),
      (error: Error) => put((before) => ({ ...before, trouble: error.message })),
    );
    const seen = document.visibilityState === 'visible';
    if (mine === turn.current && seen) timer.current = setTimeout(look, ms);
  }, [ask, ms]);
  useEffect(() => {
    look();
    const seen = () => document.visibilityState === 'visible' && look();
    document.addEventListener('visibilitychange', seen);
    return () => {
      document.removeEventListener('visibilitychange', seen);
      clearTimeout(timer.current);
      turn.current += 1;
    };
  }, [look]);
  return { ...state, look };
}

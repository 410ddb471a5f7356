import { useEffect } from 'preact/hooks';

/** Keeps the screen lit; the lock is lost whenever the page is hidden, so it is asked for again. */
export function useWakeLock(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | undefined;
    const ask = () => {
      if (document.visibilityState !== 'visible' || !navigator.wakeLock) return;
      navigator.wakeLock.request('screen').then(
        (granted) => {
          lock = granted;
        },
        // A phone short of power refuses: its screen then goes dark as usual.
        () => undefined,
      );
    };
    ask();
    document.addEventListener('visibilitychange', ask);
    return () => {
      document.removeEventListener('visibilitychange', ask);
      void lock?.release();
    };
  }, []);
}

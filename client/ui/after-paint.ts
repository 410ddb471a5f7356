import { useEffect, useState } from 'preact/hooks';

/** False at first, true once what was drawn first is on the screen. */
export function useAfterPaint(): boolean {
  const [painted, setPainted] = useState(false);
  useEffect(() => setPainted(true), []);
  return painted;
}

/** So many of `total` as to fill a screen at first, and then more and more of them until all are drawn. */
export function useMoreAndMore(total: number, screenful: number): number {
  const [many, setMany] = useState(screenful);
  useEffect(() => {
    if (many < total) setMany(many * TIMES_MORE);
  }, [many, total]);
  return Math.min(many, total);
}

const TIMES_MORE = 3;

import { useEffect, useState } from 'preact/hooks';
import { breath } from './breath.ts';
import { usePrinting } from './printing.ts';

/** How many of `total` long parts to draw: one more with each drawing, and the browser can draw and answer in between. */
export function usePartByPart(total: number): number {
  const [many, setMany] = useState(0);
  const printing = usePrinting();
  useEffect(() => {
    if (many === total) return;
    let left = false;
    void breath().then(() => left || setMany(many + 1));
    return () => {
      left = true;
    };
  }, [many, total]);
  return printing ? total : many;
}

/** How many of `total` to draw: first one screenful, then more and more, until all are drawn. */
export function useMoreAndMore(total: number, screenful: number): number {
  const [many, setMany] = useState(screenful);
  const printing = usePrinting();
  useEffect(() => {
    if (many < total) setMany(many * TIMES_MORE);
  }, [many, total]);
  return printing ? total : Math.min(many, total);
}

const TIMES_MORE = 3;

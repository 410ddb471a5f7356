import { options } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

/**
 * Whether the page is being put on paper. A browser takes what the page holds when it has told `beforeprint`, so what is
 * drawn in steps is then drawn whole, and at once.
 */
let printing = false;
const drawings = new Set<() => void>();

addEventListener('beforeprint', () => {
  printing = true;
  const { debounceRendering } = options;
  // Otherwise the drawing would come a moment after the event, and too late.
  options.debounceRendering = (draw) => draw();
  for (const draw of drawings) draw();
  if (debounceRendering) options.debounceRendering = debounceRendering;
  else delete options.debounceRendering;
});
addEventListener('afterprint', () => {
  printing = false;
});

/** True from `beforeprint` to `afterprint`. */
export function usePrinting(): boolean {
  const [, draw] = useState({});
  // Before the browser can draw: a print may come between the drawing and what follows it.
  useLayoutEffect(() => {
    const again = () => draw({});
    drawings.add(again);
    return () => void drawings.delete(again);
  }, []);
  return printing;
}

import type { RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/** The width of an element in CSS pixels, so that the letters of a chart have the same size on every screen. */
export function useWidth<E extends Element>(first: number): [RefObject<E | null>, number] {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(first);
  useEffect(() => {
    const element = ref.current;
    if (!element) return;
    const observer = new ResizeObserver(([entry]) => {
      // A hidden element has no width: keep the drawing as it is.
      if (entry && entry.contentRect.width > 0) setWidth(Math.round(entry.contentRect.width));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, width];
}

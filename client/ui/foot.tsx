import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { coveredBelow } from './covered.ts';
import './foot.css';

/** The main key of a form, with why its last try failed: in sight however long the form is, and above the keyboard of the phone. */
export function Foot({ children }: { children: ComponentChildren }) {
  const foot = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const seen = globalThis.visualViewport;
    if (!seen) return;
    const lift = () =>
      foot.current?.style.setProperty(
        '--covered',
        `${coveredBelow(seen, document.documentElement.clientHeight)}px`,
      );
    lift();
    seen.addEventListener('resize', lift);
    seen.addEventListener('scroll', lift);
    return () => {
      seen.removeEventListener('resize', lift);
      seen.removeEventListener('scroll', lift);
    };
  }, []);
  return (
    <div class="foot" ref={foot}>
      {children}
    </div>
  );
}

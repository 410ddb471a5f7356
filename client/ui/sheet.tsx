import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import './sheet.css';

/** A box over the screen. The browser keeps the focus inside and closes it on Escape. */
export function Sheet({
  title,
  onClose,
  children,
}: {
  title: string;
  onClose: () => void;
  children: ComponentChildren;
}) {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => ref.current?.showModal(), []);
  return (
    <dialog class="sheet" ref={ref} aria-label={title} onClose={onClose}>
      <header class="sheet-head">
        <h2>{title}</h2>
        <button type="button" class="button" onClick={onClose}>
          Close
        </button>
      </header>
      <div class="sheet-body">{children}</div>
    </dialog>
  );
}

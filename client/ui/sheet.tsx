import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import './sheet.css';

/** A panel over the screen; the browser keeps the focus in it and closes it on Escape. */
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

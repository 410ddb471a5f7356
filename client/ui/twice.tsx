import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

interface TwiceProps {
  first: string;
  second: string;
  busy: boolean;
  /** Resolves to true when it was done. */
  onSure: () => Promise<boolean>;
  /** What it leads to, said before the second press. */
  children?: ComponentChildren;
}

/** A button that is pressed twice. */
export function Twice({ first, second, busy, onSure, children }: TwiceProps) {
  const [sure, setSure] = useState(false);
  if (!sure)
    return (
      <button type="button" class="button" onClick={() => setSure(true)}>
        {first}
      </button>
    );
  const press = async () => {
    if (await onSure()) setSure(false);
  };
  return (
    <>
      {children}
      <div class="choices">
        <button type="button" class="button danger" disabled={busy} onClick={press}>
          {second}
        </button>
        <button type="button" class="button" onClick={() => setSure(false)}>
          Keep it
        </button>
      </div>
    </>
  );
}

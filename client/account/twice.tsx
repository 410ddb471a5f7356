import { useState } from 'preact/hooks';

interface TwiceProps {
  first: string;
  second: string;
  busy: boolean;
  onSure: () => void;
}

/** A button that is pressed twice. */
export function Twice({ first, second, busy, onSure }: TwiceProps) {
  const [sure, setSure] = useState(false);
  return sure ? (
    <div class="choices">
      <button type="button" class="button danger" disabled={busy} onClick={onSure}>
        {second}
      </button>
      <button type="button" class="button" onClick={() => setSure(false)}>
        Keep it
      </button>
    </div>
  ) : (
    <button type="button" class="button" onClick={() => setSure(true)}>
      {first}
    </button>
  );
}

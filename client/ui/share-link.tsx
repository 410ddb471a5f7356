import { useRef, useState } from 'preact/hooks';
import './share-link.css';

/** An address that can be sent on, copied, or, where the browser allows neither, selected. */
export function ShareLink({ label, url }: { label: string; url: string }) {
  const [done, setDone] = useState(false);
  const box = useRef<HTMLInputElement>(null);
  const share = async () => {
    try {
      if (navigator.share) await navigator.share({ title: label, url });
      else await navigator.clipboard.writeText(url);
      setDone(true);
    } catch {
      // Put away by the person, or not allowed here: the address is selected for copying by hand.
      box.current?.select();
    }
  };
  return (
    <div class="share">
      <input
        ref={box}
        readOnly
        value={url}
        aria-label={label}
        onFocus={(event) => event.currentTarget.select()}
      />
      <button type="button" class="button" onClick={share}>
        {done ? 'Copied' : 'Share'}
      </button>
    </div>
  );
}

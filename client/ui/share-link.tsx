import { useRef, useState } from 'preact/hooks';
import './share-link.css';

/**
 * A link that can be sent on or copied; where the browser allows neither, it is selected. `to`: as `linkTo` gives
 * it.
 */
export function ShareLink({ label, to }: { label: string; to: string }) {
  const url = new URL(to, location.origin).href;
  const [done, setDone] = useState(false);
  const box = useRef<HTMLInputElement>(null);
  const share = async () => {
    try {
      if (navigator.share) await navigator.share({ title: label, url });
      else await navigator.clipboard.writeText(url);
      setDone(true);
    } catch {
      // The person closed the dialog, or the browser refused: select the link, to be copied by hand.
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

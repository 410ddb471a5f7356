import { useRef, useState } from 'preact/hooks';
import { AS_TEXT, COPIED, COPY, MEETING_CODE, TEXT_TO_SEND } from '../../src/phrases/meeting.ts';
import { Square } from '../ui/square.tsx';

/** A code of this phone: to be scanned by the other one, or sent as text. `code`: what the square holds. */
export function CodeBox({ code }: { code: string }) {
  const [copied, setCopied] = useState(false);
  const box = useRef<HTMLTextAreaElement>(null);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(code);
      setCopied(true);
    } catch {
      // To be copied by hand.
      box.current?.select();
    }
  };
  return (
    <>
      <Square text={code} label={MEETING_CODE} />
      <details class="more">
        <summary>{AS_TEXT}</summary>
        <label>
          {TEXT_TO_SEND}
          <textarea ref={box} readOnly rows={4} value={code} translate={false} />
        </label>
        <button type="button" class="button" onClick={copy}>
          {copied ? COPIED : COPY}
        </button>
      </details>
    </>
  );
}

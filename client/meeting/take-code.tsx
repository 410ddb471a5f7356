import { useState } from 'preact/hooks';
import {
  AS_TEXT,
  POINT_AT_CODE,
  SCAN_ITS_CODE,
  STOP_SCANNING,
  TEXT_OF_OTHER,
  USE_TEXT,
} from '../../src/phrases/meeting.ts';
import { useCamera } from '../sight/use-camera.ts';
import { Failure } from '../ui/failure.tsx';
import { squareIn } from './square-in.ts';

const LOOK_EVERY_MS = 200;

/** Takes the code of the other phone, by camera or as text. */
export function TakeCode({ onCode }: { onCode: (code: string) => void }) {
  const [scans, setScans] = useState(false);
  const [typed, setTyped] = useState('');
  const taken = (code: string) => {
    setScans(false);
    onCode(code);
  };
  return (
    <>
      {scans ? (
        <Scan onCode={taken} onStop={() => setScans(false)} />
      ) : (
        <button type="button" class="button main" onClick={() => setScans(true)}>
          {SCAN_ITS_CODE}
        </button>
      )}
      <details class="more">
        <summary>{AS_TEXT}</summary>
        <label>
          {TEXT_OF_OTHER}
          <textarea
            rows={4}
            value={typed}
            autocapitalize="off"
            spellcheck={false}
            onInput={(event) => setTyped(event.currentTarget.value)}
          />
        </label>
        <button type="button" class="button" disabled={typed.trim() === ''} onClick={() => taken(typed)}>
          {USE_TEXT}
        </button>
      </details>
    </>
  );
}

function Scan({ onCode, onStop }: { onCode: (code: string) => void; onStop: () => void }) {
  const { video, fault } = useCamera(LOOK_EVERY_MS, (picture) => {
    const code = squareIn(picture);
    if (code) onCode(code);
  });
  return (
    <div class="scan">
      <Failure text={fault} />
      {!fault && (
        <>
          <p>{POINT_AT_CODE}</p>
          <video ref={video} autoplay playsinline muted />
        </>
      )}
      <button type="button" class="button" onClick={onStop}>
        {STOP_SCANNING}
      </button>
    </div>
  );
}

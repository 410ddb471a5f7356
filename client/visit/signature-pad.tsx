import { useRef, useState } from 'preact/hooks';
import { BOX, inBox, type Point, type Strokes, strokesPath } from './strokes.ts';

/** A box to sign in with finger, pen or mouse. The signature is kept as strokes, not as a picture. */
export function SignaturePad({ strokes, onDraw }: { strokes: Strokes; onDraw: (strokes: Strokes) => void }) {
  const [stroke, setStroke] = useState<Point[]>([]);
  // Several movements can come between two drawings of the page.
  const points = useRef<Point[]>([]);
  const drawing = useRef(false);
  const add = (event: PointerEvent) => {
    const box = (event.currentTarget as SVGElement).getBoundingClientRect();
    points.current = [
      ...points.current,
      inBox(event.clientX - box.left, event.clientY - box.top, box.width, box.height),
    ];
    setStroke(points.current);
  };
  const begin = (event: PointerEvent) => {
    (event.currentTarget as SVGElement).setPointerCapture(event.pointerId);
    drawing.current = true;
    points.current = [];
    add(event);
  };
  const end = () => {
    if (!drawing.current) return;
    drawing.current = false;
    onDraw([...strokes, points.current]);
    setStroke([]);
  };
  return (
    <div class="sign-pad">
      <svg
        viewBox={`0 0 ${BOX.width} ${BOX.height}`}
        role="img"
        aria-label="Box to sign in with a finger or a pen"
        onPointerDown={begin}
        onPointerMove={(event) => drawing.current && add(event)}
        onPointerUp={end}
        onPointerCancel={end}
      >
        <path class="sign-line" d={`M60 ${BOX.height - 90}H${BOX.width - 60}`} />
        <path class="sign-ink" d={strokesPath(stroke.length > 0 ? [...strokes, stroke] : strokes)} />
      </svg>
      <button type="button" class="button" disabled={strokes.length === 0} onClick={() => onDraw([])}>
        Clear
      </button>
    </div>
  );
}

/** A drawn signature, as it is in the log. */
export const DrawnSignature = ({ strokes }: { strokes: readonly (readonly Point[])[] }) => (
  <svg class="signature" viewBox={`0 0 ${BOX.width} ${BOX.height}`} role="img" aria-label="Drawn signature">
    <path class="sign-ink" d={strokesPath(strokes)} />
  </svg>
);

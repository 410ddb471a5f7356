import type { Ref } from 'preact';
import { useRef } from 'preact/hooks';
import { BOX_LABEL } from '../../src/phrases/camera.ts';
import type { Share } from '../sight/camera.ts';
import { dragged, type Grip, keyed } from './box.ts';

const CORNERS: readonly (readonly [boolean, boolean])[] = [
  [true, true],
  [false, true],
  [true, false],
  [false, false],
];

interface Props {
  video: Ref<HTMLVideoElement>;
  box: Share;
  /** What it stands round, for who does not see it. */
  label?: string;
  /** Absent: the box stands fast. */
  onBox?: (box: Share) => void;
}

/** What the camera sees, with the box on it. A corner is as large as a thumb, outside the box. */
export function BoxOnPicture({ video, box, label = BOX_LABEL, onBox }: Props) {
  const picture = useRef<HTMLDivElement>(null);
  const held = useRef<{ grip: Grip; x: number; y: number; box: Share }>(undefined);
  const take = (grip: Grip) => (event: PointerEvent) => {
    if (!onBox) return;
    event.preventDefault();
    event.stopPropagation();
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    held.current = { grip, x: event.clientX, y: event.clientY, box };
  };
  const move = ({ clientX, clientY }: PointerEvent) => {
    const size = picture.current?.getBoundingClientRect();
    if (!held.current || !size || !onBox) return;
    const { grip, x, y, box: from } = held.current;
    onBox(dragged(from, grip, (clientX - x) / size.width, (clientY - y) / size.height));
  };
  const leave = () => {
    held.current = undefined;
  };
  const press = (event: KeyboardEvent) => {
    const next = keyed(box, event.key, event.shiftKey);
    if (!next) return;
    event.preventDefault();
    onBox?.(next);
  };
  const percent = (share: number) => `${100 * share}%`;
  const place = {
    left: percent(box.x),
    top: percent(box.y),
    width: percent(box.width),
    height: percent(box.height),
  };
  return (
    <div class="watch-picture" ref={picture}>
      <video ref={video} muted playsInline autoplay />
      {onBox ? (
        // biome-ignore lint/a11y/useSemanticElements: a box to be moved is no fieldset.
        <div
          class="watch-box"
          style={place}
          role="group"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys move it.
          tabIndex={0}
          aria-label={label}
          onKeyDown={press}
          onPointerDown={take('inside')}
          onPointerMove={move}
          onPointerUp={leave}
          onPointerCancel={leave}
        >
          {CORNERS.map(([left, upper]) => (
            <span
              key={`${left}${upper}`}
              class={`watch-corner ${upper ? 'upper' : 'lower'} ${left ? 'left' : 'right'}`}
              onPointerDown={take([left, upper])}
              onPointerMove={move}
              onPointerUp={leave}
              onPointerCancel={leave}
            />
          ))}
        </div>
      ) : (
        <div class="watch-box" style={place} />
      )}
    </div>
  );
}

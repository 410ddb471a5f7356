import { useRef, useState } from 'preact/hooks';
import { aroundLamp, driftOf, seenAt } from '../../src/indicator/look.ts';
import type { Moment } from '../../src/indicator/watch.ts';
import type { Drift, Surroundings } from '../../src/sight/drift.ts';
import type { Frame } from '../../src/sight/patch.ts';
import { grab, inPixels, type Share } from '../sight/camera.ts';
import type { Grabbed } from '../sight/reader.ts';
import { useCamera } from '../sight/use-camera.ts';
import type { Source } from './use-following.ts';

/** Ten looks a second tell a lamp that goes on five times in one. Milliseconds. */
const EVERY_MS = 100;
/** Whether it was moved is worked out at every so many looks: it costs more than all else. */
const DRIFT_EVERY = 5;
/** A lamp in fewer camera pixels than this is too small. Our own figure, no source. */
const SMALLEST_LAMP = 8;

const frameOf = ({ data, width, height }: Grabbed): Frame => ({ data, width, height, channels: 4 });

/** Three times as wide and high: what is around the lamp tells whether the phone still stands as it was taught. */
const widened = ({ x, y, width, height }: Share): Share => ({
  x: x - width,
  y: y - height,
  width: 3 * width,
  height: 3 * height,
});

interface Lamp extends Source<Moment> {
  video: { current: HTMLVideoElement | null };
  tooSmall: boolean;
}

/** Opens the camera while it is mounted, and looks at the lamp in the box. */
export function useLamp(box: Share, onMoment: (moment: Moment) => void): Lamp {
  const [tooSmall, setTooSmall] = useState(false);
  const first = useRef<Surroundings>(undefined);
  const moved = useRef<Drift>(undefined);
  const looks = useRef(0);
  const camera = useCamera(EVERY_MS, (video, at) => {
    const grabbed = grab(video, widened(box));
    if (!grabbed) return;
    const frame = frameOf(grabbed);
    setTooSmall(inPixels(video, box).height < SMALLEST_LAMP);
    if (first.current && looks.current++ % DRIFT_EVERY === 0)
      moved.current = driftOf(first.current, frame, grabbed.box);
    onMoment(seenAt(at, frame, grabbed.box, moved.current));
  });
  return {
    ...camera,
    tooSmall,
    noLevel: false,
    prepare() {
      const video = camera.video.current;
      const grabbed = video && grab(video, widened(box));
      first.current = grabbed ? aroundLamp(frameOf(grabbed), grabbed.box) : undefined;
      moved.current = undefined;
      looks.current = 0;
    },
    keep: () => undefined,
  };
}

import { useEffect, useRef, useState } from 'preact/hooks';
import { readerFaultText } from '../../src/phrases/camera.ts';
import { SMALLEST_BOX } from '../../src/sight/patch.ts';
import type { Look } from '../../src/sight/watch.ts';
import { grab, inPixels, type Share } from '../sight/camera.ts';
import { openReader, type Reader } from '../sight/reader.ts';
import { type CameraPicture, useCamera } from '../sight/use-camera.ts';

/** From the beginning of one look to that of the next, milliseconds. */
const EVERY_MS = 450;

export interface Looks extends CameraPicture {
  /** The box has too few pixels. */
  tooSmall: boolean;
  /** Keeps what is seen now as what the display looks like. */
  learn(): Promise<void>;
}

/** Opens the camera while it is mounted, and looks at the box about twice a second. Each look goes to `onLook`. */
export function useLooks(box: Share, onLook: (look: Look) => void): Looks {
  const reader = useRef<Reader>(undefined);
  const closed = useRef(false);
  const [fault, setFault] = useState<string>();
  const [tooSmall, setTooSmall] = useState(false);
  useEffect(() => {
    const opened = openReader();
    reader.current = opened;
    return () => {
      closed.current = true;
      opened.close();
    };
  }, []);
  // A look takes its time, and the page may have been drawn anew meanwhile.
  const newest = useRef(onLook);
  newest.current = onLook;
  const camera = useCamera(EVERY_MS, async (video, at) => {
    const grabbed = grab(video, box);
    if (!grabbed || !reader.current) return;
    setTooSmall(inPixels(video, box).height < SMALLEST_BOX);
    try {
      const seen = await reader.current.look(grabbed);
      if (closed.current) return;
      setFault(undefined);
      newest.current({ ...seen, at });
    } catch (error) {
      if (!closed.current) setFault(readerFaultText(error as Error));
    }
  });
  const learn = async () => {
    const video = camera.video.current;
    const grabbed = video && grab(video, box);
    if (grabbed) await reader.current?.learn(grabbed);
  };
  return { video: camera.video, fault: camera.fault ?? fault, tooSmall, learn };
}

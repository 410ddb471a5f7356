import { useEffect, useRef, useState } from 'preact/hooks';
import { CAMERA_INSECURE, cameraFaultText, readerFaultText } from '../../src/phrases/camera.ts';
import { SMALLEST_BOX } from '../../src/sight/patch.ts';
import type { Look } from '../../src/sight/watch.ts';
import { grab, inPixels, openCamera, type Share } from '../sight/camera.ts';
import { openReader, type Reader } from '../sight/reader.ts';

/** From the beginning of one look to that of the next, milliseconds; on a slow phone it may take longer. */
const EVERY_MS = 450;

export interface Looks {
  /** Ref of the element that shows the picture. */
  video: { current: HTMLVideoElement | null };
  /** Why there is no picture or no reading; undefined while all is well. */
  fault: string | undefined;
  /** The box has too few pixels. */
  tooSmall: boolean;
  /** Keeps what is seen now as what the display looks like. */
  learn(): Promise<void>;
}

/** Opens the camera while it is mounted, and looks at the box about twice a second. Each look goes to `onLook`. */
export function useLooks(box: Share, onLook: (look: Look) => void): Looks {
  const video = useRef<HTMLVideoElement>(null);
  const reader = useRef<Reader>(undefined);
  const [fault, setFault] = useState<string>();
  const [tooSmall, setTooSmall] = useState(false);
  const now = useRef({ box, onLook });
  now.current = { box, onLook };
  useEffect(() => {
    let closed = false;
    let stream: MediaStream | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const reading = openReader();
    reader.current = reading;
    const look = async () => {
      const begun = performance.now();
      const { current } = video;
      const grabbed = current && grab(current, now.current.box);
      if (grabbed) {
        setTooSmall(inPixels(current, now.current.box).height < SMALLEST_BOX);
        try {
          const seen = await reading.look(grabbed);
          if (closed) return;
          setFault(undefined);
          now.current.onLook({ ...seen, at: begun });
        } catch (error) {
          if (!closed) setFault(readerFaultText(error as Error));
        }
      }
      if (!closed) timer = setTimeout(look, Math.max(0, EVERY_MS - (performance.now() - begun)));
    };
    const open = async () => {
      if (!navigator.mediaDevices) return setFault(CAMERA_INSECURE);
      try {
        stream = await openCamera();
      } catch (error) {
        return setFault(cameraFaultText(error as Error));
      }
      if (closed || !video.current) return stop(stream);
      video.current.srcObject = stream;
      void look();
    };
    void open();
    return () => {
      closed = true;
      clearTimeout(timer);
      stop(stream);
      reading.close();
    };
  }, []);
  const learn = async () => {
    const grabbed = video.current && grab(video.current, now.current.box);
    if (grabbed) await reader.current?.learn(grabbed);
  };
  return { video, fault, tooSmall, learn };
}

const stop = (stream: MediaStream | undefined): void => {
  for (const track of stream?.getTracks() ?? []) track.stop();
};

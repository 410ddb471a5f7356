import { useEffect, useRef, useState } from 'preact/hooks';
import { CAMERA_INSECURE, cameraFaultText } from '../../src/phrases/camera.ts';
import { openCamera } from './camera.ts';

export interface CameraPicture {
  /** Ref of the element that shows the picture. */
  video: { current: HTMLVideoElement | null };
  /** Why there is no picture; undefined while all is well. */
  fault: string | undefined;
}

/**
 * Opens the camera while it is mounted, and gives the picture to `look` every so many milliseconds; on a slow phone it may take
 * longer. `at`: when the look began.
 */
export function useCamera(
  everyMs: number,
  look: (video: HTMLVideoElement, at: number) => Promise<void> | void,
): CameraPicture {
  const video = useRef<HTMLVideoElement>(null);
  const [fault, setFault] = useState<string>();
  const newest = useRef(look);
  newest.current = look;
  useEffect(() => {
    let closed = false;
    let stream: MediaStream | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const next = async () => {
      const at = performance.now();
      if (video.current) await newest.current(video.current, at);
      if (!closed) timer = setTimeout(next, Math.max(0, everyMs - (performance.now() - at)));
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
      void next();
    };
    void open();
    return () => {
      closed = true;
      clearTimeout(timer);
      stop(stream);
    };
  }, []);
  return { video, fault };
}

const stop = (stream: MediaStream | undefined): void => {
  for (const track of stream?.getTracks() ?? []) track.stop();
};

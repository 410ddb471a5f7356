import type { Box } from '../../src/sight/patch.ts';
import type { Grabbed } from './reader.ts';

/** Opens the camera on the back of the phone. Rejects with the `DOMException` of the browser. */
export const openCamera = (): Promise<MediaStream> =>
  navigator.mediaDevices.getUserMedia({
    audio: false,
    video: { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 720 } },
  });

/** A box as shares (0 to 1) of the picture. */
export interface Share {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** The same box in the pixels of this camera's frames. */
export const inPixels = (video: HTMLVideoElement, share: Share): Box => ({
  x: share.x * video.videoWidth,
  y: share.y * video.videoHeight,
  width: share.width * video.videoWidth,
  height: share.height * video.videoHeight,
});

const canvas = document.createElement('canvas');
const context = canvas.getContext('2d', { willReadFrequently: true });

/** What the camera sees now in the box, and half its height around it. Undefined: there is no picture yet. */
export function grab(video: HTMLVideoElement, share: Share): Grabbed | undefined {
  if (!context || video.videoWidth === 0) return undefined;
  const box = inPixels(video, share);
  const edge = box.height / 2 + 2;
  const left = Math.max(0, Math.floor(box.x - edge));
  const top = Math.max(0, Math.floor(box.y - edge));
  const width = Math.min(video.videoWidth, Math.ceil(box.x + box.width + edge)) - left;
  const height = Math.min(video.videoHeight, Math.ceil(box.y + box.height + edge)) - top;
  canvas.width = width;
  canvas.height = height;
  context.drawImage(video, left, top, width, height, 0, 0, width, height);
  const { data } = context.getImageData(0, 0, width, height);
  return { data, width, height, box: { ...box, x: box.x - left, y: box.y - top } };
}

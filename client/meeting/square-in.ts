import decodeQR from 'qr/decode.js';

/** The picture is looked at no larger than this: a square code that fills half of it has still five points for each of its cells. */
const WIDEST = 800;

const canvas = document.createElement('canvas');
const context = canvas.getContext('2d', { willReadFrequently: true });

/** What the square code says that the camera sees now; undefined while it sees none. */
export function squareIn(video: HTMLVideoElement): string | undefined {
  if (!context || video.videoWidth === 0) return undefined;
  const share = Math.min(1, WIDEST / Math.max(video.videoWidth, video.videoHeight));
  canvas.width = Math.round(video.videoWidth * share);
  canvas.height = Math.round(video.videoHeight * share);
  context.drawImage(video, 0, 0, canvas.width, canvas.height);
  try {
    return decodeQR(context.getImageData(0, 0, canvas.width, canvas.height));
  } catch {
    return undefined;
  }
}

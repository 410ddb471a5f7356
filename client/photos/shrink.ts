import { withoutNotes } from '../../src/formats/jpeg.ts';
import { fitting } from './fitting.ts';

/** A photo as it is sent: small, upright, and without what the camera writes beside the picture. */
export interface SmallPhoto {
  readonly blob: Blob;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
}

/** The file is no picture that this browser can read. */
export class NoPicture extends Error {
  override name = 'NoPicture';
}

/**
 * Draws a picture anew as a JPEG of at most `most` bytes. What is drawn has no place, time or phone in it: only the picture.
 * @throws {NoPicture}
 */
export async function shrink(file: Blob, most: number): Promise<SmallPhoto> {
  // As the phone was held: the camera says beside the picture how it is to be turned.
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => {
    throw new NoPicture();
  });
  try {
    for (const { width, height, quality } of fitting(picture)) {
      const blob = await drawn(picture, width, height, quality);
      if (blob.size <= most) return { blob, width, height };
    }
    throw new NoPicture();
  } finally {
    picture.close();
  }
}

async function drawn(picture: ImageBitmap, width: number, height: number, quality: number): Promise<Blob> {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext('2d');
  if (!pen) throw new NoPicture();
  // A JPEG has no holes to look through: what was one would be black.
  pen.fillStyle = 'white';
  pen.fillRect(0, 0, width, height);
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(picture, 0, 0, width, height);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
  if (!blob) throw new NoPicture();
  const file = withoutNotes(new Uint8Array(await blob.arrayBuffer()));
  return new Blob([new Uint8Array(file)], { type: 'image/jpeg' });
}

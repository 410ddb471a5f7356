import type { Page } from 'playwright-core';
import decodeQR from 'qr/decode.js';
import sharp from 'sharp';

/** What the square code on a page says, read off a picture of its screen. */
export async function squareOn(page: Page): Promise<string> {
  await page.locator('.square svg').waitFor();
  const picture = await page.locator('.square').screenshot();
  const { data, info } = await sharp(picture).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return decodeQR(
    { data: new Uint8Array(data), width: info.width, height: info.height },
    { timeLimit: 2_000 },
  );
}

/** Before a page opens: its camera sees the square code on the screen of the other phone, held a little askew. */
export async function cameraSeesSquareOf(page: Page, other: () => Page): Promise<void> {
  await page.exposeFunction('squarePicture', async () => {
    const picture = await other().locator('.square').screenshot();
    return `data:image/png;base64,${picture.toString('base64')}`;
  });
  await page.addInitScript(() => {
    const { squarePicture } = window as unknown as { squarePicture(): Promise<string> };
    navigator.mediaDevices.getUserMedia = async () => {
      const canvas = document.createElement('canvas');
      canvas.width = 1280;
      canvas.height = 720;
      const ctx = canvas.getContext('2d') as CanvasRenderingContext2D;
      const square = new Image();
      square.src = await squarePicture();
      await square.decode();
      const draw = () => {
        ctx.setTransform(1, 0, 0, 1, 0, 0);
        ctx.fillStyle = 'rgb(70 74 78)';
        ctx.fillRect(0, 0, 1280, 720);
        ctx.translate(640, 360);
        ctx.rotate(0.08);
        ctx.drawImage(square, -290, -290, 580, 580);
      };
      draw();
      setInterval(draw, 100);
      return canvas.captureStream(10);
    };
  });
}

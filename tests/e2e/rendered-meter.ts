import { createCanvas } from '@napi-rs/canvas';
import type { Page } from 'playwright-core';
import { type Drawn, drawDisplay, type Look } from '../../client/sight/training/displays.ts';

/** A display with round ends to its segments: none such was trained on. */
const LOOK: Look = {
  drawing: { by: 'segments', ends: 'round', thickness: 0.12, gap: 0.012, width: 0.56, others: '' },
  slant: 0.08,
  space: 0.24,
  lit: 235,
  unlit: 34,
  ground: 22,
  around: 120,
  glow: 0.08,
  margin: 0.35,
};
const [WIDTH, HEIGHT] = [1280, 720];
/** How large it is in the picture, against how it is drawn; and where its left upper corner is. */
const SCALE = 2.4;
const PLACE = { x: 380, y: 190 };

/** Where the number stands in the camera's picture, with all its places, in shares of it. */
export function numberIn(places: number): { x: number; y: number; width: number; height: number } {
  const drawn = drawDisplay(LOOK, '8'.repeat(places));
  const edge = 0.16 * (drawn.bottom - drawn.top);
  return {
    x: (PLACE.x + (drawn.left - edge) * SCALE) / WIDTH,
    y: (PLACE.y + (drawn.top - edge) * SCALE) / HEIGHT,
    width: ((drawn.right - drawn.left + 2 * edge) * SCALE) / WIDTH,
    height: ((drawn.bottom - drawn.top + 2 * edge) * SCALE) / HEIGHT,
  };
}

function pictureOf({ frame }: Drawn): string {
  const canvas = createCanvas(frame.width, frame.height);
  const ctx = canvas.getContext('2d');
  const image = ctx.createImageData(frame.width, frame.height);
  for (let i = 0; i < frame.width * frame.height; i++) {
    const grey = frame.data[i] ?? 0;
    image.data.set([grey, grey * 0.9, grey * 0.8, 255], 4 * i);
  }
  ctx.putImageData(image, 0, 0);
  return canvas.toDataURL('image/png');
}

export interface RenderedMeter {
  /** What happens to the phone: its camera's picture moves by so many pixels, or gets this share of the light. */
  movedBy(x: number): Promise<void>;
  light(share: number): Promise<void>;
}

/** Before the page opens: its camera sees a drawn display that shows `shown()`, with the noise of a camera. */
export async function cameraSees(page: Page, places: number, shown: () => string): Promise<RenderedMeter> {
  await page.exposeFunction('displayPicture', () => pictureOf(drawDisplay(LOOK, shown().padStart(places))));
  await page.addInitScript(
    ({ width, height, scale, place }) => {
      const state = { x: 0, light: 1 };
      Object.assign(window, { camera: state });
      const { displayPicture } = window as unknown as { displayPicture(): Promise<string> };
      navigator.mediaDevices.getUserMedia = async () => {
        const canvas = document.createElement('canvas');
        canvas.width = width;
        canvas.height = height;
        const ctx = canvas.getContext('2d') as CanvasRenderingContext2D;
        const display = new Image();
        const fetched = async () => {
          display.src = await displayPicture();
          setTimeout(fetched, 150);
        };
        await fetched();
        const draw = () => {
          ctx.fillStyle = 'rgb(96 100 104)';
          ctx.fillRect(0, 0, width, height);
          ctx.fillStyle = 'rgb(210 210 200)';
          ctx.font = '40px sans-serif';
          ctx.fillText('SIGNAL', place.x + state.x + 90, place.y + 60);
          if (display.complete && display.naturalWidth > 0)
            ctx.drawImage(
              display,
              place.x + state.x,
              place.y,
              display.naturalWidth * scale,
              display.naturalHeight * scale,
            );
          ctx.fillStyle = `rgb(0 0 0 / ${1 - state.light})`;
          ctx.fillRect(0, 0, width, height);
          for (let i = 0; i < 300; i++) {
            ctx.fillStyle = `rgb(255 255 255 / ${0.06 * state.light})`;
            ctx.fillRect(Math.random() * width, Math.random() * height, 3, 3);
          }
        };
        draw();
        setInterval(draw, 100);
        return canvas.captureStream(10);
      };
    },
    { width: WIDTH, height: HEIGHT, scale: SCALE, place: PLACE },
  );
  const set = (change: object) =>
    page.evaluate((to) => void Object.assign((window as never as { camera: object }).camera, to), change);
  return { movedBy: (x) => set({ x }), light: (light) => set({ light }) };
}

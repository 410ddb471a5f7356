import type { Page } from 'playwright-core';

/** How strong a tone or a lamp is: dB of full scale, or of its brightest; undefined: off. */
export type Strength = () => number | undefined;

/**
 * Before the page opens: its clock for what it hears and sees runs so many times as fast, so that nobody waits for the lengths of
 * looks; sound and pictures come as they come.
 */
const hurry = (page: Page, times: number) =>
  page.addInitScript((faster) => {
    const real = performance.now.bind(performance);
    performance.now = () => faster * real();
  }, times);

/** Before the page opens: its microphone hears a tone of 880 Hz as strong as `strength()`, in the noise of a hall. */
export async function microphoneHearsTone(page: Page, strength: Strength, faster: number): Promise<void> {
  await hurry(page, faster);
  await page.exposeFunction('toneAmplitude', () => {
    const db = strength();
    return db === undefined ? 0 : 10 ** (db / 20);
  });
  await page.addInitScript(() => {
    const state = { noise: 0.001, isOff: false };
    Object.assign(window, { hall: state });
    const { toneAmplitude } = window as unknown as { toneAmplitude(): Promise<number> };
    navigator.mediaDevices.getUserMedia = async () => {
      const context = new AudioContext();
      const tone = new OscillatorNode(context, { frequency: 880 });
      const loudness = new GainNode(context, { gain: 0 });
      const buffer = context.createBuffer(1, context.sampleRate, context.sampleRate);
      const samples = buffer.getChannelData(0);
      for (let i = 0; i < samples.length; i++) samples[i] = 2 * Math.random() - 1;
      const noise = new AudioBufferSourceNode(context, { buffer, loop: true });
      const noiseLoudness = new GainNode(context, { gain: state.noise });
      const out = context.createMediaStreamDestination();
      tone.connect(loudness).connect(out);
      noise.connect(noiseLoudness).connect(out);
      tone.start();
      noise.start();
      setInterval(async () => {
        const amplitude = await toneAmplitude();
        loudness.gain.value = state.isOff ? 0 : amplitude;
        noiseLoudness.gain.value = state.isOff ? 0 : state.noise;
      }, 30);
      return out.stream;
    };
  });
}

/** What happens around the microphone. */
export const inTheHall = (page: Page, change: { noise?: number; isOff?: boolean }): Promise<void> =>
  page.evaluate((to) => void Object.assign((window as never as { hall: object }).hall, to), change);

const [WIDTH, HEIGHT] = [640, 480];
const LAMP = { x: 320, y: 240, radius: 26 };
/** Where the lamp stands in the camera's picture, in shares of it. */
export const LAMP_BOX = {
  x: (LAMP.x - 30) / WIDTH,
  y: (LAMP.y - 30) / HEIGHT,
  width: 60 / WIDTH,
  height: 60 / HEIGHT,
};

/** Before the page opens: its camera sees a lamp on a panel, as bright as `strength()`, with the noise of a camera. */
export async function cameraSeesLamp(page: Page, strength: Strength, faster: number): Promise<void> {
  await hurry(page, faster);
  await page.exposeFunction('lampLight', () => 10 ** ((strength() ?? -60) / 10));
  await page.addInitScript(
    ({ width, height, lamp }) => {
      const state = { x: 0, light: 1 };
      Object.assign(window, { hall: state });
      const { lampLight } = window as unknown as { lampLight(): Promise<number> };
      navigator.mediaDevices.getUserMedia = async () => {
        const canvas = document.createElement('canvas');
        canvas.width = width;
        canvas.height = height;
        const ctx = canvas.getContext('2d') as CanvasRenderingContext2D;
        let light = 0;
        const draw = () => {
          ctx.fillStyle = 'rgb(96 100 104)';
          ctx.fillRect(0, 0, width, height);
          ctx.strokeStyle = 'rgb(220 220 210)';
          ctx.lineWidth = 6;
          ctx.strokeRect(lamp.x - 70 + state.x, lamp.y - 60, 150, 130);
          ctx.fillStyle = 'rgb(220 220 210)';
          ctx.font = '28px sans-serif';
          ctx.fillText('BEAM 2', lamp.x - 50 + state.x, lamp.y + 62);
          // The inverse of the transfer function of sRGB, near enough: the power 1/2.2.
          const value = Math.round(255 * light ** (1 / 2.2));
          ctx.fillStyle = `rgb(${value} ${Math.round(value / 3)} ${Math.round(value / 3)})`;
          ctx.beginPath();
          ctx.arc(lamp.x + state.x, lamp.y, lamp.radius, 0, 2 * Math.PI);
          ctx.fill();
          ctx.fillStyle = `rgb(0 0 0 / ${1 - state.light})`;
          ctx.fillRect(0, 0, width, height);
          for (let i = 0; i < 200; i++) {
            ctx.fillStyle = `rgb(255 255 255 / ${0.06 * state.light})`;
            ctx.fillRect(Math.random() * width, Math.random() * height, 3, 3);
          }
        };
        draw();
        setInterval(async () => {
          light = await lampLight();
          draw();
        }, 50);
        return canvas.captureStream(20);
      };
    },
    { width: WIDTH, height: HEIGHT, lamp: LAMP },
  );
}

/** What happens to the phone: its camera's picture moves by so many pixels, or gets this share of the light. */
export const toTheCamera = (page: Page, change: { x?: number; light?: number }): Promise<void> =>
  page.evaluate((to) => void Object.assign((window as never as { hall: object }).hall, to), change);

import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { spokenFile } from '../sounds/spoken.ts';

/** A synthetic voice says these words into the microphone of the page. */
export const speak = (page: Page, words: string): Promise<void> =>
  page.evaluate(
    (sound) => (window as never as { say(sound: string): Promise<void> }).say(sound),
    readFileSync(spokenFile(words)).toString('base64'),
  );

/** Before the page opens: its microphone hears quiet, and what `window.say` plays into it; its own ears are on. */
export async function microphoneHears(page: Page): Promise<void> {
  await page.addInitScript(() => {
    localStorage.setItem('ladderline.own-ears', 'true');
    let context: AudioContext;
    let line: MediaStreamAudioDestinationNode;
    navigator.mediaDevices.getUserMedia = async () => {
      context = new AudioContext();
      line = context.createMediaStreamDestination();
      // The noise of a quiet hall: a line with nothing on it at all is no microphone.
      const noise = context.createBuffer(1, context.sampleRate * 2, context.sampleRate);
      const samples = noise.getChannelData(0);
      for (let i = 0; i < samples.length; i++) samples[i] = (Math.random() - 0.5) * 0.002;
      const hall = new AudioBufferSourceNode(context, { buffer: noise, loop: true });
      hall.connect(line);
      hall.start();
      return line.stream;
    };
    Object.assign(window, {
      async say(sound: string) {
        const bytes = Uint8Array.from(atob(sound), (letter) => letter.charCodeAt(0));
        const buffer = await context.decodeAudioData(bytes.buffer);
        const voice = new AudioBufferSourceNode(context, { buffer });
        voice.connect(line);
        voice.start();
      },
    });
  });
}

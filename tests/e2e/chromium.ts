import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** The Chromium for the browser tests. Without one they are left out, and the last lines of the output say so. */
export const CHROMIUM: string | undefined = [process.env.CHROMIUM, ...PLACES].find(
  (path) => path !== undefined && existsSync(path),
);

/**
 * A fresh browser. `microphone`: a WAV file that it hears once, starting when the page opens the microphone. `more`:
 * further switches of Chromium.
 */
export function launch(microphone?: string, more: readonly string[] = []): Promise<Browser> {
  if (!CHROMIUM) throw new Error('no Chromium: these tests must be skipped');
  return chromium.launch({
    executablePath: CHROMIUM,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      ...(microphone ? [`--use-file-for-fake-audio-capture=${microphone}%noloop`] : []),
      ...more,
    ],
  });
}

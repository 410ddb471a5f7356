import type { Reporter } from 'vitest/node';
import { CHROMIUM } from './e2e/chromium.ts';

/** Says in the last lines, clearly, when the browser tests could not run. */
export default class LeftOut implements Reporter {
  onTestRunEnd(): void {
    if (CHROMIUM) return;
    const line = '!'.repeat(78);
    console.log(`\n${line}`);
    console.log('!! The browser tests were LEFT OUT: no Chromium was found.');
    console.log('!! Install one (Debian: apt-get install chromium) or set CHROMIUM to its path.');
    console.log(`${line}\n`);
  }
}

import type { Reporter } from 'vitest/node';
import { CHROMIUM } from './e2e/chromium.ts';
import { POSTGRES } from './postgres/cluster.ts';
import { PYTHON } from './python/find.ts';
import { PROXIES } from './server/proxies.ts';

/** Says in the last lines, clearly, which tests could not run. */
export default class LeftOut implements Reporter {
  onTestRunEnd(): void {
    if (!CHROMIUM) {
      say(
        'The browser tests were LEFT OUT: no Chromium was found.',
        'Install one (Debian: apt-get install chromium) or set CHROMIUM to its path.',
      );
    }
    if (!PYTHON) {
      say(
        'The test of a client in Python was LEFT OUT: no Python 3 was found.',
        'Install one (Debian: apt-get install python3).',
      );
    }
    if (!POSTGRES) {
      say(
        'The tests with PostgreSQL were LEFT OUT: it was not found.',
        'Install it (Debian: apt-get install postgresql) or set POSTGRES_BIN to the folder of its programs.',
      );
    }
    for (const { name, command, debian } of PROXIES) {
      if (command) continue;
      say(
        `The test of the settings for ${name} was LEFT OUT: no ${name} was found.`,
        `Install one (Debian: apt-get install ${debian}).`,
      );
    }
  }
}

function say(...lines: string[]): void {
  const edge = '!'.repeat(78);
  console.log(`\n${edge}\n${lines.map((line) => `!! ${line}`).join('\n')}\n${edge}\n`);
}

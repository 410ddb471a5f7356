import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { speechAt } from '../../server/speech/elsewhere.ts';
import { readSound } from '../../server/speech/sound-file.ts';
import { spokenFile } from '../sounds/spoken.ts';

/** The program of the speech service, from its sources. */
function start(...args: string[]) {
  const program = ['--import', 'tsx', 'server/speech/serve-main.ts', '--port', '0', ...args];
  const child = spawn(process.execPath, program, { stdio: ['ignore', 'pipe', 'pipe'] });
  onTestFinished(() => void child.kill('SIGKILL'));
  let said = '';
  child.stderr.on('data', (text) => {
    said += text;
  });
  const ended = once(child, 'close').then(([code]) => ({ code, said }));
  return { child, ended };
}

it('the speech service hears for servers that know its password, for no one else, and ends in order', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-speech-service-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const file = join(folder, 'password');
  writeFileSync(file, 'of the services\n', { mode: 0o600 });
  const { child, ended } = start('--host', '0.0.0.0', '--password-file', file);
  let out = '';
  let url: string | undefined;
  for await (const text of child.stdout.iterator({ destroyOnReturn: false })) {
    out += text;
    url = /Speech service at (\S+), ready/.exec(out)?.[1]?.replace('0.0.0.0', '127.0.0.1');
    if (url) break;
  }
  const engine = speechAt([url ?? ''], { password: 'of the services' });
  await engine.ready;
  const sound = await readSound(spokenFile('fifteen'));
  expect((await engine.transcribe(sound)).text).toBe('fifteen');
  const stranger = speechAt([url ?? ''], { password: 'another one' });
  await expect(stranger.ready).rejects.toThrow(/password is wrong/);
  await expect(stranger.transcribe(sound)).rejects.toThrow(/password is wrong/);
  await Promise.all([engine.close(), stranger.close()]);
  child.kill('SIGTERM');
  expect((await ended).code).toBe(0);
}, 60_000);

it('the speech service is not open to others without a password, and says what to do', async () => {
  const { code, said } = await start('--host', '0.0.0.0').ended;
  expect(code).toBe(1);
  expect(said).toMatch(/^speech-service: .*give --password-file/m);
});

import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, onTestFinished } from 'vitest';
import { DATABASE_FILE } from '../../server/store/data-folder.ts';
import { chooseDriver } from '../../server/store/drivers.ts';
import { SCHEMA_VERSION } from '../../server/store/schema.ts';
import { isInstalled } from '../../server/voice/synthesiser.ts';
import { run, start } from './child.ts';
import { get } from './phone.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-start-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;
const newFolder = () => join(root, String(++folders));

/** The program ends with one line on the error output, which matches `clue`, and nothing more. */
async function endsWith(clue: RegExp, args: string[], env: Record<string, string> = {}) {
  const { code, out, err } = await run(args, env).ended;
  expect(err).toMatch(clue);
  expect(err.trim().split('\n')).toHaveLength(1);
  expect(code).toBeGreaterThan(0);
  expect(out).toBe('');
}

describe('the program', { timeout: 60_000 }, () => {
  it('lists every option with its environment name', async () => {
    const { code, out } = await run(['--help']).ended;
    expect(code).toBe(0);
    for (const name of [
      'port',
      'host',
      'data',
      'tls',
      'cert',
      'key',
      'speech',
      'model',
      'voice',
      'name',
      'trust-proxy',
      'proxy-header',
      'disk-least',
      'log-level',
    ]) {
      expect(out).toContain(`--${name} `);
      expect(out).toContain(`LADDERLINE_${name.toUpperCase().replaceAll('-', '_')}`);
    }
  });

  it('prints each address, the data folder and the speech engine, and stops without error when asked to', async () => {
    const data = newFolder();
    const server = await start(data);
    expect((await get(server.url, '/api/health')).status).toBe(200);
    server.child.kill('SIGINT');
    const { code, out, err } = await server.ended;
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/This machine +http:\/\/localhost:\d+\n/);
    expect(out).toContain(data);
    expect(out).toMatch(/Speech +off: people type/);
    expect(out).toMatch(/Voice +off: phones speak with their own/);
  });

  it.skipIf(isInstalled())(
    'says how to install the voice, and under which licence, when it is not there',
    async () => {
      await endsWith(/npm install .*text2wav/, ['--port', '0', '--data', newFolder(), '--voice', 'on']);
      await endsWith(/GPL-3\.0-or-later/, ['--port', '0', '--data', newFolder(), '--voice', 'on']);
    },
  );

  it.runIf(isInstalled())('names the licence of the voice when it is turned on', async () => {
    const server = await start(newFolder(), '--voice', 'on');
    server.child.kill('SIGINT');
    expect((await server.ended).out).toMatch(/Voice +text2wav.*GPL-3\.0-or-later/);
  });

  it('takes its options from the environment too', async () => {
    const data = newFolder();
    const env = {
      LADDERLINE_PORT: '0',
      LADDERLINE_HOST: '127.0.0.1',
      LADDERLINE_TLS: 'off',
      LADDERLINE_DATA: data,
    };
    const url = await run([], env).started;
    expect((await get(url, '/api/health')).status).toBe(200);
  });

  it.each([
    [['--port', 'eighty'], /--port .*'eighty'.*0 to 65535/],
    [['--port', '65536'], /--port/],
    [['--tls', 'maybe'], /--tls .*own, off, files/],
    [['--tls', 'files'], /--cert and --key/],
    [['--cert', 'x.pem'], /go with --tls files/],
    [['--name', 'a b'], /--name .*commas/],
    [['--trust-proxy', '10.0.0.0/33'], /--trust-proxy .*10\.0\.0\.0\/33 is no address/],
    [['--proxy-header', 'via'], /--proxy-header .*x-forwarded-for, forwarded/],
    [['--voice', 'loud'], /--voice .*on, off/],
    [['--disk-least', 'much'], /--disk-least .*megabytes/],
    [['--log-level', 'loud'], /--log-level/],
    [['--colour'], /unknown option '--colour'/],
    [['serve'], /too many arguments/],
  ])('refuses a bad option: %j', async (args, clue) => {
    await endsWith(clue, args);
  });

  it('refuses a port that is in use', async () => {
    const holder = createServer().listen(0, '127.0.0.1');
    onTestFinished(() => {
      holder.close();
    });
    await new Promise((resolve) => holder.once('listening', resolve));
    const { port } = holder.address() as { port: number };
    await endsWith(/port \d+ is in use.*--port/, [
      '--port',
      `${port}`,
      '--host',
      '127.0.0.1',
      '--data',
      newFolder(),
    ]);
  });

  it('refuses an address this machine does not have', async () => {
    // RFC 5737: TEST-NET-3 belongs to nobody.
    await endsWith(/203\.0\.113\.9 is not an address of this machine/, [
      ...['--port', '0', '--host', '203.0.113.9', '--data', newFolder()],
    ]);
  });

  it('refuses a data folder it cannot write', async () => {
    const file = join(root, 'a-file');
    writeFileSync(file, '');
    await endsWith(/data folder .* cannot be written.*--data/, ['--port', '0', '--data', file]);
    await endsWith(/data folder .* cannot be written.*--data/, [
      '--port',
      '0',
      '--data',
      join(file, 'below'),
    ]);
  });

  it('refuses a damaged database, and leaves it as it is', async () => {
    const data = newFolder();
    mkdirSync(data);
    const junk = 'no database at all '.repeat(100);
    writeFileSync(join(data, DATABASE_FILE), junk);
    await endsWith(/is damaged .*backup/, ['--port', '0', '--data', data]);
    expect(readFileSync(join(data, DATABASE_FILE), 'utf8')).toBe(junk);
  });

  it('refuses a database of a newer version', async () => {
    const data = newFolder();
    const server = await start(data);
    server.child.kill();
    await server.ended;
    const db = chooseDriver().open(join(data, DATABASE_FILE));
    db.exec(`PRAGMA user_version = ${SCHEMA_VERSION + 1}`);
    db.close();
    await endsWith(new RegExp(`schema version ${SCHEMA_VERSION + 1}`), ['--port', '0', '--data', data]);
  });

  it('refuses a second server on the same data folder', async () => {
    const data = newFolder();
    await start(data);
    await endsWith(/is in use by another program/, ['--port', '0', '--data', data]);
  });

  it('refuses certificate files that are missing or do not belong together', async () => {
    const file = join(root, 'not.pem');
    writeFileSync(file, 'not a certificate');
    const common = ['--port', '0', '--data', newFolder(), '--tls', 'files'];
    await endsWith(/cannot be read/, [...common, '--cert', join(root, 'none.pem'), '--key', file]);
    await endsWith(/belong together/, [...common, '--cert', file, '--key', file]);
  });
});

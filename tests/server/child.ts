import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';
import { afterAll, onTestFinished } from 'vitest';

// Bundled once for all tests of a file, as `npm run build` does: it starts several times faster than the sources. The
// bundle is inside node_modules, so that it finds the packages.
const CACHE = join('node_modules', '.cache');
mkdirSync(CACHE, { recursive: true });
const outDir = mkdtempSync(join(CACHE, 'ladderline-test-'));
afterAll(() => rmSync(outDir, { recursive: true }));
await build({
  configFile: false,
  logLevel: 'error',
  build: {
    ssr: true,
    outDir,
    target: 'node20',
    rollupOptions: { input: { main: 'server/main.ts', 'store-worker': 'server/store/store-worker.ts' } },
  },
});
export const PROGRAM = join(outDir, 'main.js');

export interface Ended {
  code: number | null;
  signal: NodeJS.Signals | null;
  out: string;
  err: string;
}

/** The real program in its own process, killed at the end of the test if it still runs. */
export function run(args: string[], env: Record<string, string> = {}) {
  const child: ChildProcess = spawn(process.execPath, [PROGRAM, ...args], {
    // The speech engine has its own tests, and takes a second to load.
    env: { ...process.env, LADDERLINE_SPEECH: 'off', ...env },
  });
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  let out = '';
  let err = '';
  child.stdout?.on('data', (text) => {
    out += text;
  });
  child.stderr?.on('data', (text) => {
    err += text;
  });
  const ended = new Promise<Ended>((resolve) => {
    child.on('close', (code, signal) => resolve({ code, signal, out, err }));
  });
  /** The address on this machine, once it is printed. */
  const started = new Promise<string>((resolve, reject) => {
    child.stdout?.on('data', () => {
      const url = /This machine +(\S+)/.exec(out)?.[1];
      if (url) resolve(url);
    });
    ended.then(() => reject(new Error(`the server ended: ${err}`)));
  });
  started.catch(() => {});
  return { child, started, ended };
}

/** Starts a server on a data folder, for this machine only. */
export async function start(data: string, ...more: string[]) {
  const server = run(['--port', '0', '--host', '127.0.0.1', '--tls', 'off', '--data', data, ...more]);
  return { ...server, url: await server.started };
}

import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout } from 'node:timers/promises';
import { endsWithUs } from './with-us.ts';

const TRIES = 40;
const AGAIN_AFTER_MS = 500;

/** One process of a server, at the same port each time that it is started. */
export class ServerProcess {
  url = '';
  private child: ChildProcess | undefined;

  /** `program`: the built `main.js`. */
  constructor(
    private readonly program: string,
    private readonly args: readonly string[],
  ) {}

  /** Again where it ends at once, as one does whose port somebody else has for a moment. */
  async start(): Promise<void> {
    for (let tries = 1; !(await this.startOnce()); tries++) {
      if (tries === TRIES) throw new Error(`the server did not start: ${this.args.join(' ')}`);
      await setTimeout(AGAIN_AFTER_MS);
    }
  }

  private async startOnce(): Promise<boolean> {
    const child = spawn(process.execPath, [this.program, ...this.args, '--port', `${this.port ?? 0}`], {
      env: { ...process.env, LADDERLINE_SPEECH: 'off' },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    this.child = child;
    endsWithUs(child);
    let said = '';
    child.stderr.on('data', (text) => {
      said += text;
    });
    let out = '';
    for await (const text of child.stdout.iterator({ destroyOnReturn: false })) {
      out += text;
      const url = /This machine +(\S+)/.exec(out)?.[1];
      if (!url) continue;
      this.url = url;
      child.stdout.resume();
      child.stderr.removeAllListeners('data').resume();
      return true;
    }
    console.error(`The server did not start: ${said}`);
    return false;
  }

  /** Undefined before it was first started. */
  get port(): number | undefined {
    return this.url === '' ? undefined : Number(new URL(this.url).port);
  }

  signal(signal: NodeJS.Signals): void {
    this.child?.kill(signal);
  }

  async end(signal: NodeJS.Signals): Promise<void> {
    if (!this.child || this.child.exitCode !== null || this.child.signalCode !== null) return;
    const ended = once(this.child, 'exit');
    this.child.kill(signal);
    await ended;
  }
}

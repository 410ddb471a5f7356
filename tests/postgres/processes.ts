import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { endsWithUs } from './with-us.ts';

/** One process of a server, at the same port each time that it is started. */
export class ServerProcess {
  url = '';
  private child: ChildProcess | undefined;

  /** `program`: the built `main.js`. */
  constructor(
    private readonly program: string,
    private readonly args: readonly string[],
  ) {}

  async start(): Promise<void> {
    const child = spawn(process.execPath, [this.program, ...this.args, '--port', `${this.port ?? 0}`], {
      env: { ...process.env, LADDERLINE_SPEECH: 'off' },
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    this.child = child;
    endsWithUs(child);
    let out = '';
    for (;;) {
      const [text] = await once(child.stdout, 'data');
      out += text;
      const url = /This machine +(\S+)/.exec(out)?.[1];
      if (!url) continue;
      this.url = url;
      return;
    }
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

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { connect } from 'node:net';
import { setTimeout } from 'node:timers/promises';
import { endsWithUs } from '../../postgres/with-us.ts';
import { processorOfTree } from '../relay/used.ts';
import type { Broker } from './carrier.ts';

/** Starts a program that listens on this port of this machine; undefined where it is not installed. */
export async function startProgram(
  program: string,
  args: readonly string[],
  port: number,
): Promise<Broker | undefined> {
  const child = spawn(program, args, { stdio: 'ignore' });
  const started = await once(child, 'spawn').then(
    () => true,
    () => false,
  );
  if (!started) return undefined;
  endsWithUs(child);
  for (let tries = 0; !(await answers(port)); tries++) {
    if (tries > 200 || child.exitCode !== null) throw new Error(`${program} does not answer`);
    await setTimeout(50);
  }
  return {
    address: `127.0.0.1:${port}`,
    processorMs: () => processorOfTree(child.pid ?? 0),
    async end() {
      const ended = once(child, 'exit');
      child.kill('SIGKILL');
      await ended;
    },
  };
}

function answers(port: number): Promise<boolean> {
  const socket = connect(port, '127.0.0.1');
  return new Promise((resolve) => {
    socket.once('connect', () => resolve(true));
    socket.once('error', () => resolve(false));
  }).then((is) => {
    socket.destroy();
    return is as boolean;
  });
}

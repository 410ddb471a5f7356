import { onTestFinished } from 'vitest';
import { type RunningServer, type ServerOptions, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';

/** A server on a free port of this machine, stopped at the end of the test. */
export async function serve(options: Partial<ServerOptions> = {}): Promise<RunningServer> {
  const server = await startServer({ store: new MemoryStore(), ...options });
  onTestFinished(() => server.close());
  return server;
}

export const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

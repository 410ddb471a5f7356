import { chmodSync, rmSync } from 'node:fs';
import { connect, createServer, type Socket } from 'node:net';
import { join } from 'node:path';
import { createInterface } from 'node:readline/promises';
import type { Logger } from 'pino';
import * as z from 'zod/mini';
import { FILE_OF_OWNER } from '../store/owner-only.ts';
import { StoreFailure } from '../store/store.ts';

/** Only the server itself can read its database while it runs, so the backup command asks it here. */
const SOCKET_FILE = 'backup.sock';

const Ask = z.object({ copyTo: z.string() });
const Told = z.object({ failed: z.optional(z.string()) });

export interface Backups {
  close(): void;
}

/** Copies the database for whoever may open the socket in the data folder: the user who runs the server. */
export async function serveBackups(
  folder: string,
  store: { copyTo(file: string): Promise<void> },
  log: Logger,
): Promise<Backups> {
  const file = join(folder, SOCKET_FILE);
  const server = createServer((socket) => {
    socket.on('error', () => socket.destroy());
    answer(socket, store).catch((error: unknown) => log.error({ err: error }, 'a backup could not be made'));
  });
  // Left behind by a server that was killed; only one server at a time has this folder.
  rmSync(file, { force: true });
  await new Promise<void>((resolve) => {
    server.once('error', (error) => {
      log.warn({ err: error }, 'backups cannot be made while this server runs: stop it first');
      resolve();
    });
    server.listen(file, () => {
      chmodSync(file, FILE_OF_OWNER);
      resolve();
    });
  });
  server.unref();
  return { close: () => void server.close() };
}

async function answer(socket: Socket, store: { copyTo(file: string): Promise<void> }): Promise<void> {
  for await (const line of createInterface({ input: socket })) {
    const told: z.infer<typeof Told> = await store.copyTo(Ask.parse(JSON.parse(line)).copyTo).then(
      () => ({}),
      (error: Error) => ({ failed: error.message }),
    );
    socket.end(`${JSON.stringify(told)}\n`);
  }
}

/** False when no server runs on this folder. Rejects with `StoreFailure` when the running one could not do it. */
export async function askForCopy(folder: string, copyTo: string): Promise<boolean> {
  const socket = await new Promise<Socket | undefined>((resolve) => {
    const trying = connect(join(folder, SOCKET_FILE));
    trying.once('connect', () => resolve(trying));
    trying.once('error', () => resolve(undefined));
  });
  if (!socket) return false;
  socket.on('error', () => socket.destroy());
  socket.write(`${JSON.stringify({ copyTo } satisfies z.infer<typeof Ask>)}\n`);
  for await (const line of createInterface({ input: socket })) {
    const { failed } = Told.parse(JSON.parse(line));
    if (failed !== undefined) throw new StoreFailure(failed);
    return true;
  }
  throw new StoreFailure('the server ended before the backup was ready: try again.');
}

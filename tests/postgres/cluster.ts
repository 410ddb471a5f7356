import { execFileSync, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { Client } from 'pg';
import type { DatabaseAddress } from '../../server/postgres/address.ts';
import { endsWithUs } from './with-us.ts';

/** Debian keeps the programs of each version apart from the path. */
const DEBIAN = '/usr/lib/postgresql';

/** The folder of PostgreSQL's programs; undefined where there is none. `POSTGRES_BIN` names another. */
export const POSTGRES: string | undefined = [
  process.env.POSTGRES_BIN ?? '',
  ...(existsSync(DEBIAN)
    ? readdirSync(DEBIAN)
        .sort((a, b) => Number(b) - Number(a))
        .map((version) => join(DEBIAN, version, 'bin'))
    : []),
].find((folder) => folder !== '' && existsSync(join(folder, 'initdb')));

/** Many small files come and go: in memory where there is room. It syncs all the same. */
const MEMORY = '/dev/shm';
const ROOM_BYTES = 512 * 1024 ** 2;

function folderForMany(): string {
  if (!existsSync(MEMORY)) return tmpdir();
  const { bavail, bsize } = statfsSync(MEMORY);
  return bavail * bsize > ROOM_BYTES ? MEMORY : tmpdir();
}

/** PostgreSQL refuses to run as root: there it runs as the user that Debian's package makes. */
const IS_ROOT = process.getuid?.() === 0;
const as = (program: string, args: readonly string[]): [string, string[]] =>
  IS_ROOT
    ? ['setpriv', ['--reuid=postgres', '--regid=postgres', '--clear-groups', program, ...args]]
    : [program, [...args]];

/** A PostgreSQL of our own in a temporary folder, reached over a unix socket there. */
export class Cluster {
  private server: ReturnType<typeof spawn> | undefined;
  private places = 0;

  readonly password = randomBytes(12).toString('hex');

  private constructor(private readonly folder: string) {}

  /** `inside`: where its folder is made. */
  static async start(settings: Record<string, string> = {}, inside = folderForMany()): Promise<Cluster> {
    const folder = mkdtempSync(join(inside, 'ladderline-pg-'));
    if (IS_ROOT) execFileSync('chown', ['postgres:postgres', folder]);
    const cluster = new Cluster(folder);
    writeFileSync(cluster.passwordFile, `${cluster.password}\n`, { mode: 0o644 });
    const access = ['-U', 'tester', '-A', 'scram-sha-256', `--pwfile=${cluster.passwordFile}`];
    const args = ['-D', cluster.data, ...access, '-E', 'UTF8', '--locale=C', '--no-sync'];
    execFileSync(...as(join(POSTGRES ?? '', 'initdb'), args), {
      stdio: ['ignore', 'ignore', 'inherit'],
      cwd: '/',
    });
    await cluster.run(settings);
    return cluster;
  }

  get pid(): number {
    return this.server?.pid ?? 0;
  }

  get passwordFile(): string {
    return join(this.folder, 'password');
  }

  private get data(): string {
    return join(this.folder, 'data');
  }

  /** Starts it, again where it was stopped or killed. */
  async run(settings: Record<string, string> = {}): Promise<void> {
    const given = {
      listen_addresses: '',
      unix_socket_directories: this.folder,
      // So that nothing of it stays when it is killed.
      dynamic_shared_memory_type: 'mmap',
      ...settings,
    };
    const args = Object.entries(given).flatMap(([name, value]) => ['-c', `${name}=${value}`]);
    this.server = spawn(...as(join(POSTGRES ?? '', 'postgres'), ['-D', this.data, ...args]), {
      stdio: 'ignore',
      cwd: '/',
    });
    endsWithUs(this.server);
    for (let tries = 0; !(await this.answers()); tries++) {
      if (tries > 400) throw new Error('PostgreSQL does not answer');
      await setTimeout(50);
    }
  }

  private async answers(): Promise<boolean> {
    if (this.server?.exitCode !== null) throw new Error('PostgreSQL did not start');
    const client = this.client();
    client.on('error', () => {});
    return client.connect().then(
      () => client.end().then(() => true),
      () => false,
    );
  }

  /** `SIGINT`: at once, all connections are cut. `SIGQUIT`: as if it had been killed; it recovers from its log. */
  async stop(signal: 'SIGINT' | 'SIGQUIT' = 'SIGINT'): Promise<void> {
    const ended = once(this.server as never, 'exit');
    this.server?.kill(signal);
    await ended;
  }

  async remove(): Promise<void> {
    await this.stop('SIGQUIT');
    rmSync(this.folder, { recursive: true });
  }

  /** As the program is given it. */
  get url(): string {
    return `postgres://tester@/postgres?host=${this.folder}`;
  }

  /** A place for a store that nobody had before. */
  newPlace(): DatabaseAddress & { schema: string } {
    return { url: this.url, passwordFile: this.passwordFile, schema: `place_${++this.places}` };
  }

  private client(schema = 'public'): Client {
    return new Client({
      host: this.folder,
      ...{ user: 'tester', database: 'postgres', password: this.password },
      options: `-c search_path=${schema}`,
    });
  }

  /** Statements as the owner of the database, behind the store's back. */
  async sql(text: string, schema?: string): Promise<Record<string, unknown>[]> {
    const client = this.client(schema);
    await client.connect();
    try {
      // Of several statements, what the last one gave.
      return [await client.query(text)].flat().at(-1)?.rows ?? [];
    } finally {
      await client.end();
    }
  }
}

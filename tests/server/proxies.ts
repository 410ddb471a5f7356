import { spawn, spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { join } from 'node:path';

const DEPLOY = new URL('../../docs/deploy/', import.meta.url);

/** Where the settings are tried: what in them is of another machine is put in its place, and nothing else. */
export interface Place {
  /** For what the proxy writes. */
  readonly folder: string;
  readonly https: number;
  readonly http: number;
  readonly server: number;
  readonly cert: string;
  readonly key: string;
}

export interface Proxy {
  readonly name: string;
  /** The package that brings it. */
  readonly debian: string;
  /** How to call it; undefined where this machine has none. */
  readonly command: string | undefined;
  /** Writes the settings into the folder, and returns the arguments. */
  readonly settle: (place: Place) => string[];
}

const find = (paths: string[], ask: string): string | undefined =>
  paths.find((path) => spawnSync(path, [ask]).status === 0);

/** Exactly one thing in the settings, so that the test fails when they no longer say it. */
function put(settings: string, was: string, is: string): string {
  if (settings.split(was).length !== 2) throw new Error(`the settings do not have "${was}" once`);
  return settings.replace(was, is);
}

export const PROXIES: readonly Proxy[] = [
  {
    name: 'nginx',
    debian: 'nginx-light',
    command: find(['nginx', '/usr/sbin/nginx'], '-v'),
    settle({ folder, https, http, server, cert, key }) {
      let site = readFileSync(new URL('nginx.conf', DEPLOY), 'utf8');
      site = put(site, '    listen 443 ssl;\n', `    listen 127.0.0.1:${https} ssl;\n`);
      site = put(site, '    listen [::]:443 ssl;\n', '');
      site = put(site, '    listen 80;\n', `    listen 127.0.0.1:${http};\n`);
      site = put(site, '    listen [::]:80;\n', '');
      site = put(site, '/etc/ssl/ladder.firm.example.pem', cert);
      site = put(site, '/etc/ssl/private/ladder.firm.example.key', key);
      site = put(site, 'http://127.0.0.1:8470', `http://127.0.0.1:${server}`);
      const temporary = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map(
        (kind) => `${kind}_temp_path ${join(folder, kind)};`,
      );
      const main = `daemon off; pid ${join(folder, 'pid')}; error_log stderr; events {}
        http { access_log off; ${temporary.join(' ')}\n${site}\n}`;
      const file = join(folder, 'nginx.conf');
      writeFileSync(file, main);
      return ['-p', folder, '-c', file, '-e', 'stderr'];
    },
  },
  {
    name: 'caddy',
    debian: 'caddy',
    command: find(['caddy', '/usr/bin/caddy'], 'version'),
    settle({ folder, https, http, server, cert, key }) {
      let site = readFileSync(new URL('Caddyfile', DEPLOY), 'utf8');
      site = put(
        site,
        'ladder.firm.example {\n',
        `ladder.firm.example {\n\ttls ${cert} ${key}\n\tbind 127.0.0.1\n`,
      );
      site = put(site, '127.0.0.1:8470', `127.0.0.1:${server}`);
      const main = `{\n\tadmin off\n\thttps_port ${https}\n\thttp_port ${http}\n\tstorage file_system ${folder}\n}\n${site}`;
      const file = join(folder, 'Caddyfile');
      writeFileSync(file, main);
      return ['run', '--config', file, '--adapter', 'caddyfile'];
    },
  },
];

export async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  await new Promise((resolve) => server.close(resolve));
  return port;
}

/** Runs it. `said`: what it told so far, for the failure of a test. */
export function run({ command = '', settle }: Proxy, place: Place): { said(): string; end(): void } {
  const child = spawn(command, settle(place), { env: { ...process.env, HOME: place.folder } });
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (text) => {
      said += text;
    });
  return { said: () => said, end: () => void child.kill('SIGTERM') };
}

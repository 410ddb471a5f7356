import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { readOptions } from '../../server/options.ts';
import { serve } from './house.ts';
import { get } from './phone.ts';

const DEPLOY = 'docs/deploy';
const DOC = readFileSync('docs/operations.md', 'utf8');
const FILES = readdirSync(DEPLOY).map((name) => ({ name, text: readFileSync(join(DEPLOY, name), 'utf8') }));
const ALL = [DOC, ...FILES.map(({ text }) => text)].join('\n');
const allOf = (pattern: RegExp, text = ALL): string[] => [
  ...new Set([...text.matchAll(pattern)].map(([, found = '']) => found)),
];

it('what docs/operations.md and docs/deploy set are settings of the server', () => {
  const options = ['server/options.ts', 'server/postgres/command.ts'].map((file) =>
    readFileSync(file, 'utf8'),
  );
  const known = allOf(/\.env\('(LADDERLINE_\w+)'\)/g, options.join('\n'));
  const named = allOf(/\b(LADDERLINE_[A-Z_]+)\b/g);
  expect(named.length).toBeGreaterThan(8);
  expect(named.filter((name) => !known.includes(name))).toEqual([]);
});

it('the settings for a proxy are taken by the server as they stand there', () => {
  const [, block = ''] = /```sh\n((?:LADDERLINE_\w+=.*\n)+)```/.exec(DOC) ?? [];
  const before = { ...process.env };
  onTestFinished(() => {
    process.env = before;
  });
  for (const [, name = '', value] of block.matchAll(/^(\w+)=(.*)$/gm)) process.env[name] = value;
  const { host, tls, name, trustProxy } = readOptions([]);
  expect({ host, tls, name, trustProxy }).toEqual({
    host: '127.0.0.1',
    tls: 'off',
    name: ['ladder.firm.example'],
    trustProxy: ['127.0.0.1'],
  });
});

it('the metrics that ask for an alert are measured', async () => {
  const token = 'metrics-token';
  const { url } = await serve({ metricsToken: token });
  const measured = await (await get(url, '/api/metrics', token)).text();
  const named = allOf(/\b(ladderline_[a-z_]+?)(?:_bucket)?\b(?=[\s{[`)])/g, DOC);
  expect(named.length).toBeGreaterThan(5);
  expect(named.filter((name) => !measured.includes(`# TYPE ${name} `))).toEqual([]);
  expect(measured).toContain('# HELP ladderline_message_seconds ');
});

it('the programs that are called are built, and the files that are copied are there', () => {
  const built = allOf(/^\s+'?([\w-]+)'?: 'server\//gm, readFileSync('vite.server.config.ts', 'utf8'));
  const called = allOf(/dist\/server\/([\w-]+)\.js/g);
  expect(called.length).toBeGreaterThan(3);
  expect(called.filter((name) => !built.includes(name))).toEqual([]);
  const copied = [
    ...allOf(/\b(docs\/deploy\/[\w.-]+)/g),
    ...allOf(/\]\((deploy\/[\w.-]+)\)/g).map((file) => `docs/${file}`),
  ];
  expect(copied.filter((file) => !existsSync(file))).toEqual([]);
  const [stage = ''] = /COPY --from=built \/app\/(server\/\S+)/.exec(ALL)?.slice(1) ?? [];
  expect(existsSync(stage)).toBe(true);
});

it('every way to start the server gives what lives short the same room', () => {
  const { scripts } = JSON.parse(readFileSync('package.json', 'utf8'));
  const started = [
    scripts.start.split('&&').at(-1),
    ...FILES.flatMap(({ text }) => text.match(/^(?:ExecStart|CMD).*main\.js.*$/gm) ?? []),
    /const YOUNG = .*/.exec(readFileSync('tests/bench/relay.ts', 'utf8'))?.[0],
  ];
  expect(started).toHaveLength(4);
  expect(started.map((way) => /--max-semi-space-size=(\d+)/.exec(way)?.[1])).toEqual([
    '64',
    '64',
    '64',
    '64',
  ]);
});

// systemd is not running here; its own checker reads the units. Debian: apt-get install systemd.
const CHECKER = spawnSync('systemd-analyze', ['--version']).status === 0;

it.skipIf(!CHECKER)('the units are as systemd reads them, and closed as far as JavaScript can be', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-units-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const units = FILES.filter(({ name }) => /\.(service|timer)$/.test(name));
  expect(units).toHaveLength(3);
  // The checker wants the program where this machine has it.
  for (const { name, text } of units)
    writeFileSync(join(folder, name), text.replaceAll('/usr/bin/node', process.execPath));
  const paths = units.map(({ name }) => join(folder, name));
  const { status, stdout, stderr } = spawnSync('systemd-analyze', ['verify', ...paths], { encoding: 'utf8' });
  expect([status, `${stdout}${stderr}`]).toEqual([0, '']);
  for (const path of paths.filter((each) => each.endsWith('.service'))) {
    const { stdout: told } = spawnSync(
      'systemd-analyze',
      ['security', '--offline=true', '--no-pager', path],
      {
        encoding: 'utf8',
      },
    );
    // From 0 (closed) to 10; what is left is the network, and memory that is written and run.
    expect(Number(/Overall exposure level for \S+: ([\d.]+)/.exec(told)?.[1])).toBeLessThan(2);
  }
});

import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command, InvalidArgumentError, Option } from 'commander';
import { describe } from '../../src/phrases/describe.ts';
import { JobOpened, Joined } from '../../src/protocol/jobs.ts';
import { DEMO_PAIRS, DUSTY_PAIR, playDemoSite } from '../../src/simulator/demo-site.ts';
import { createBeamPair, shortfallDb } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { startServer } from '../start.ts';
import { openDataFolder } from '../store/data-folder.ts';
import { DemoCrew } from './crew.ts';
import { hurriedClock } from './hurry.ts';
import { Phone } from './phone.ts';
import { DEMO_PAIR, DEMO_SETUP } from './site.ts';
import { layDown } from './site-fixture.ts';

interface DemoOptions {
  speed: number;
  port: number;
  seed: number;
  data?: string;
  exit?: boolean;
  site?: boolean;
}

function readOptions(argv: string[]): DemoOptions {
  return new Command('demo')
    .description('Two simulated phones align one beam pair of an invented site against the real server.')
    .addOption(
      new Option('--speed <times>', 'how many times faster than real time; "fast" is 20')
        .default(1)
        .argParser((text) => numberIn(text === 'fast' ? '20' : text, 0.1, 50)),
    )
    .addOption(new Option('--port <number>', 'port').default(8471).argParser((t) => numberIn(t, 0, 65535)))
    .addOption(
      new Option('--seed <number>', 'seed of the simulated noise')
        .default(1)
        .argParser((t) => numberIn(t, 0, 2 ** 31)),
    )
    .option('--data <folder>', 'keep the log here instead of in a new temporary folder')
    .option('--exit', 'end when the pair is accepted; do not serve its record')
    .option('--site', 'serve a whole invented site: a dozen pairs, some with planted faults')
    .parse(argv, { from: 'user' })
    .opts();
}

function numberIn(text: string, low: number, high: number): number {
  const value = Number(text);
  if (!(value >= low && value <= high))
    throw new InvalidArgumentError(`It must be a number from ${low} to ${high}.`);
  return value;
}

async function post<T>(url: string, body: unknown, shape: { parse(value: unknown): T }): Promise<T> {
  const response = await fetch(url, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  if (!response.ok) throw new Error(`${url} answered ${response.status}: ${await response.text()}`);
  return shape.parse(await response.json());
}

/** Prints the exchange as it grows. */
function narrate(phone: Phone): void {
  let told = 0;
  phone.onChange(() => {
    for (; told < phone.entries.length; told++) {
      const entry = phone.entries[told];
      const line = entry && describe(entry, DEMO_SETUP.meter);
      if (line)
        console.log(`${new Date(entry.at).toISOString().slice(11, 19)}  ${line.who.padEnd(10)} ${line.text}`);
    }
  });
}

/** When the crew of the invented site started. */
const SITE_BEGAN = Date.UTC(2026, 2, 3, 8);

async function serveSite({ port, exit }: DemoOptions, data: string): Promise<void> {
  const store = openDataFolder(data);
  const pairs = [...DEMO_PAIRS, DUSTY_PAIR];
  const { desk, watch } = await layDown(store, playDemoSite(SITE_BEGAN, pairs));
  const server = await startServer({ store, port });
  console.log(
    `The desk:   ${server.url}/site#${desk}\nTo read:    ${server.url}/site#${watch}\nData:       ${data}`,
  );
  console.log(`\nPlanted faults, by visit:`);
  for (const { id, visits } of pairs) {
    for (const [i, plants] of visits.entries())
      console.log(`  ${id}, visit ${i + 1}: ${plants.join(', ') || 'none'}`);
  }
  if (exit) return server.close();
  console.log('\nPress Ctrl-C to end.');
  process.once('SIGINT', () => void server.close().then(() => process.exit(0)));
}

async function main(): Promise<void> {
  const options = readOptions(process.argv.slice(2));
  const data = options.data ?? mkdtempSync(join(tmpdir(), 'ladderline-demo-'));
  if (options.site) return serveSite(options, data);
  const clock = hurriedClock(options.speed);
  const server = await startServer({ store: openDataFolder(data), port: options.port, clock });
  const origin = server.url;

  const opened = await post(
    `${origin}/api/jobs`,
    { setup: DEMO_SETUP, device: 'demo panel', person: { name: 'A. Example' } },
    JobOpened,
  );
  const joined = await post(
    `${origin}/api/join`,
    { code: opened.invite.code, device: 'demo emitter', person: { name: 'B. Example' } },
    Joined,
  );
  console.log(`Watch it: ${origin}/watch#${opened.watch}\nData:     ${data}\n`);

  const panel = new Phone(origin, opened.token);
  const emitter = new Phone(origin, joined.token);
  narrate(panel);
  const crew = new DemoCrew(createBeamPair(DEMO_PAIR), panel, emitter, clock, createRng(options.seed));
  await crew.finished;

  const off = shortfallDb(crew.pair).toFixed(2);
  console.log(`\nAccepted. The simulated signal is ${off} dB below the best possible.`);
  panel.hangUp();
  emitter.hangUp();
  if (options.exit) return server.close();
  console.log(`The record: ${origin}/watch#${opened.watch}   (press Ctrl-C to end)`);
  process.once('SIGINT', () => void server.close().then(() => process.exit(0)));
}

main().catch((error: unknown) => {
  console.error(`demo: ${error instanceof Error ? error.message : error}`);
  process.exit(1);
});

import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { Command } from 'commander';
import { ROOT_FOLDER } from '../../server/process/program.ts';
import { speechAt } from '../../server/speech/elsewhere.ts';
import { readSound } from '../../server/speech/sound-file.ts';
import { processorOfTree } from './relay/used.ts';

/**
 * The built speech service, in one or more processes, with many crews that talk: from the end of an utterance to its text, and what
 * that takes of a processor. The sounds are those of the tests, a synthetic voice that says one to seven words: how long it takes
 * depends on their length, and not on who says them. How much of a crew's talk is said and not typed, nobody knows: `--every`.
 */
const options = new Command('bench:speech-service')
  .option('--services <list>', 'how many processes, one after the other', '1,2')
  .option('--crews <list>', 'how many talk', '5,10,20,40')
  .option('--every <n>', 'between two utterances of one crew, in seconds', Number, 5)
  .option('--seconds <n>', 'for each number of crews', Number, 30)
  .parse()
  .opts<{ services: string; crews: string; every: number; seconds: number }>();

const numbers = (list: string): number[] => list.split(',').map(Number);

const SOUNDS = join(ROOT_FOLDER, 'tests', 'sounds');
const sounds = await Promise.all(
  readdirSync(SOUNDS)
    .filter((name) => name.endsWith('.wav'))
    .map((name) => readSound(join(SOUNDS, name))),
);

async function startService(): Promise<{ child: ChildProcess; url: string }> {
  const child = spawn(process.execPath, ['dist/server/speech-service.js', '--port', '0'], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  process.once('exit', () => child.kill('SIGKILL'));
  let out = '';
  for await (const text of child.stdout) {
    out += text;
    const url = /Speech service at (\S+), ready/.exec(out)?.[1];
    if (url) return { child, url };
  }
  throw new Error('the speech service did not start');
}

const rows = [];
for (const count of numbers(options.services)) {
  const services = await Promise.all(Array.from({ length: count }, startService));
  const engine = speechAt(services.map(({ url }) => url));
  await engine.ready;
  // Until then the programs are compiled; each service has its share.
  for (const sound of sounds) await Promise.all(services.map(() => engine.transcribe(sound)));
  const usedSoFar = () => services.reduce((sum, { child }) => sum + processorOfTree(child.pid ?? 0), 0);
  for (const crews of numbers(options.crews)) {
    const waits: number[] = [];
    let failed = 0;
    const before = usedSoFar();
    const talk = async (crew: number): Promise<void> => {
      await setTimeout((options.every * 1000 * crew) / crews);
      for (let said = 0; said * options.every < options.seconds; said++) {
        const next = setTimeout(options.every * 1000);
        const sound = sounds[(crew * 7 + said) % sounds.length] as Float32Array;
        await engine.transcribe(sound).then(
          ({ ms }) => waits.push(ms),
          () => {
            failed += 1;
          },
        );
        await next;
      }
    };
    await Promise.all(Array.from({ length: crews }, (_, crew) => talk(crew)));
    const used = usedSoFar() - before;
    waits.sort((a, b) => a - b);
    const at = (share: number) => Math.round(waits[Math.floor(share * (waits.length - 1))] ?? Number.NaN);
    const perUtterance = used / (waits.length + failed);
    rows.push({
      services: count,
      crews,
      utterances: waits.length,
      'not heard': failed,
      'to the text p50 / p99 / max, ms': [at(0.5), at(0.99), at(1)].join(' / '),
      'processor ms an utterance': Math.round(perUtterance),
      'crews a full core': Math.round((options.every * 1000) / perUtterance),
      load: loadavg()[0]?.toFixed(1),
    });
    console.log(JSON.stringify(rows.at(-1)));
  }
  await engine.close();
  for (const { child } of services) {
    const ended = once(child, 'exit');
    child.kill();
    await ended;
  }
}
console.log(
  `A crew says something each ${options.every} s; ${cpus().length} cores; Node ${process.version}.`,
);
console.table(rows);

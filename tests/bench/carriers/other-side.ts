import { readFileSync } from 'node:fs';
import type { Task } from '../carriers.ts';
import { KINDS } from './kinds.ts';

/** The process that has the job: of each frame that comes, it sends the entries back that came of it. */
const { kind, address, ...task }: Task = JSON.parse(process.argv[2] ?? '');
const entries = JSON.parse(readFileSync(task.entries, 'utf8')) as string[];
const carrier = await KINDS.find(({ name }) => name === kind)?.open(address, true);
await carrier?.listen('there', (text) => {
  const { n, of } = JSON.parse(text) as { n: number; of: number };
  void carrier.send('back', `{"n":${n},"t":"entries","entries":${entries[of]}}`);
});
process.send?.('ready');

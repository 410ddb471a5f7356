import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createRng } from '../../src/simulator/rng.ts';
import { Cluster } from '../postgres/cluster.ts';
import { play, scheduleOf } from '../postgres/ills.ts';
import { ServerProcess } from '../postgres/processes.ts';
import { Wire } from '../postgres/wire.ts';

/**
 * Schedules of ills with real processes and a real PostgreSQL (`npm run bench:schedules -- 300 1`: so many, from this seed on). A
 * line each; the seed of one that fails plays its ills again, though not the moments in which the machine did what.
 */
const [count = 300, first = 1] = process.argv.slice(2).map(Number);
const PROCESSES = 2;
const ILLS_EACH = 4;

const data = mkdtempSync(join(tmpdir(), 'ladderline-schedules-'));
const cluster = await Cluster.start();
const args = ['--host', '127.0.0.1', '--tls', 'off', '--data', data, '--store', cluster.url];
const processes: ServerProcess[] = [];
const wires: Wire[] = [];
for (let n = 0; n < PROCESSES; n++) {
  const wire = new Wire(() => processes[n]?.port);
  await wire.lay();
  wires.push(wire);
  const own = ['--store-password-file', cluster.passwordFile, '--peer', wire.url];
  processes.push(new ServerProcess('dist/server/main.js', [...args, ...own]));
}
let failed = 0;
let acknowledged = 0;
try {
  for (const one of processes) await one.start();
  for (let seed = first; seed < first + count; seed++) {
    // Spread out: of seeds that stand together, the first numbers are nearly the same.
    const random = createRng(Math.imul(seed, 0x9e3779b1));
    const ills = scheduleOf(random, ILLS_EACH);
    const played = await play({ cluster, processes, wires, random }, ills);
    acknowledged += played.acknowledged;
    if (played.faults.length > 0) failed += 1;
    const { faults } = played;
    console.log(
      `${seed}: ${ills.join(', ')}: ${played.acknowledged} acknowledged, ${played.connections} connections, ${faults.length} faults`,
    );
    for (const fault of faults) console.log(`  ${fault}`);
  }
} finally {
  for (const one of processes) await one.end('SIGKILL');
  for (const wire of wires) await wire.remove();
  await cluster.remove();
  rmSync(data, { recursive: true });
}
console.log(`${count} schedules, ${acknowledged} messages acknowledged, ${failed} schedules with faults.`);
process.exit(failed > 0 ? 1 : 0);

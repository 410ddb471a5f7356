import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createRng } from '../../src/simulator/rng.ts';
import { PROGRAM } from '../server/child.ts';
import { Cluster, POSTGRES } from './cluster.ts';
import { play } from './ills.ts';
import { ServerProcess } from './processes.ts';

describe.runIf(POSTGRES)('a schedule of ills', () => {
  it('R171: whatever is killed, cut or crashed, each acknowledged message is there once, and all saw the same', async () => {
    const data = mkdtempSync(join(tmpdir(), 'ladderline-schedule-'));
    onTestFinished(() => rmSync(data, { recursive: true }));
    const cluster = await Cluster.start();
    onTestFinished(() => cluster.remove());
    const args = ['--host', '127.0.0.1', '--tls', 'off', '--data', data, '--store', cluster.url];
    const server = () => new ServerProcess(PROGRAM, [...args, '--store-password-file', cluster.passwordFile]);
    const processes = [server(), server()];
    for (const one of processes) {
      await one.start();
      onTestFinished(() => one.end('SIGKILL'));
    }
    // One that is stopped has a test of its own, and takes long.
    const ills = ['cut connections', 'kill -9', 'cut phones', 'crash the database'] as const;
    const played = await play({ cluster, processes, wires: [], random: createRng(1) }, ills);
    expect(played.faults).toEqual([]);
    expect(played.acknowledged).toBeGreaterThan(0);
    // Each of the three came in again at least once.
    expect(played.connections).toBeGreaterThan(3);
  }, 180_000);
});

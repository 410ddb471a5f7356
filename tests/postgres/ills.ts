import { setTimeout } from 'node:timers/promises';
import type * as z from 'zod/mini';
import { findFault } from '../../src/log/chain.ts';
import { JobRecord } from '../../src/protocol/jobs.ts';
import type { Rng } from '../../src/simulator/rng.ts';
import { get, join, openJob } from '../server/phone.ts';
import type { Cluster } from './cluster.ts';
import { PatientPhone } from './patient-phone.ts';
import type { ServerProcess } from './processes.ts';
import type { Wire } from './wire.ts';

/**
 * What befalls a server of several processes on one database, with real ones of both. Each is over when it resolves: what was
 * killed or stopped runs again.
 */
export const ILLS = {
  'kill -9': async ({ processes, random }: Scene) => {
    const one = pick(processes, random);
    await one.end('SIGKILL');
    await one.start();
  },
  'end in order': async ({ processes, random }: Scene) => {
    const one = pick(processes, random);
    await one.end('SIGTERM');
    await one.start();
  },
  // A lease lasts 5 s: some of these are shorter, most are longer.
  stop: async ({ processes, random }: Scene) => {
    const one = pick(processes, random);
    one.signal('SIGSTOP');
    await setTimeout(3_000 + random() * 6_000);
    one.signal('SIGCONT');
  },
  'cut connections': async ({ cluster }: Scene) => {
    await cluster.sql(
      "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'ladderline'",
    );
  },
  // A phone in a lift: it alone is cut, now and then all of them.
  'cut phones': async ({ phones, random }: Scene) => {
    for (const phone of phones) if (random() < 0.7) phone.cut();
  },
  'cut the lines between': async ({ wires, random }: Scene) => {
    const ms = random() * 3_000;
    await Promise.all(wires.map((wire) => wire.cut(ms)));
  },
  'restart the database': async ({ cluster, random }: Scene) => {
    await cluster.stop('SIGINT');
    await setTimeout(random() * 3_000);
    await cluster.run();
  },
  'crash the database': async ({ cluster, random }: Scene) => {
    await cluster.stop('SIGQUIT');
    await setTimeout(random() * 3_000);
    await cluster.run();
  },
} as const;
export type Ill = keyof typeof ILLS;

export interface Stage {
  readonly cluster: Cluster;
  readonly processes: readonly ServerProcess[];
  /** By which processes reach each other; none where they do so by themselves. */
  readonly wires: readonly Wire[];
  readonly random: Rng;
}

interface Scene extends Stage {
  readonly phones: readonly PatientPhone[];
}

/** What came of one schedule. */
export interface Played {
  readonly acknowledged: number;
  readonly connections: number;
  readonly faults: readonly string[];
}

const pick = <T>(list: readonly T[], random: Rng): T => list[Math.floor(random() * list.length)] as T;

/** Between two messages of a phone, at most; and between two ills. */
const SAY_WITHIN_MS = 250;
const ILL_WITHIN_MS = 1_500;
/** After the last ill everything must have come through, on a busy machine too. */
const SETTLE_MS = 90_000;

/**
 * A crew that reports all the time, each phone through whatever process the proxy gives it, while one ill comes after the other.
 * Then the whole log is held against what was acknowledged and what each phone was shown.
 */
export async function play(stage: Stage, ills: readonly Ill[]): Promise<Played> {
  const { processes, random } = stage;
  const anyUrl = () => pick(processes, random).url;
  const job = await openJob(anyUrl());
  const joined = await join(anyUrl(), job.invite.code);
  const crew = [
    new PatientPhone('panel', job.token, anyUrl),
    new PatientPhone('emitter', joined.token, anyUrl),
  ];
  const phones = [...crew, new PatientPhone('watcher', job.watch, anyUrl)];
  const sent: string[] = [];
  let isSaying = true;
  const saying = (async () => {
    while (isSaying) {
      sent.push(pick(crew, random).say());
      await setTimeout(random() * SAY_WITHIN_MS);
    }
  })();
  for (const ill of ills) {
    await setTimeout(random() * ILL_WITHIN_MS);
    await ILLS[ill]({ ...stage, phones });
  }
  isSaying = false;
  await saying;
  const until = performance.now() + SETTLE_MS;
  while (crew.some(({ waiting }) => waiting > 0) && performance.now() < until) await setTimeout(50);
  const faults = crew
    .filter(({ waiting }) => waiting > 0)
    .map((one) => `${one.name}: ${one.waiting} never came through`);
  // Before the record is read: what comes later, as that a phone is gone, no phone was shown.
  for (const phone of phones) await phone.end();
  const records = await Promise.all(processes.map(({ url }) => recordAt(url, job.watch)));
  const [record, ...others] = records.sort((a, b) => b.entries.length - a.entries.length);
  if (!record) throw new Error('there is no process');
  for (const { head } of others)
    if (record.entries[head.count - 1]?.hash !== head.hash) faults.push('two processes give different logs');
  const fault = findFault(record.entries, record.head);
  if (fault) faults.push(`the log fails its check at ${fault.seq}: ${fault.fault}`);
  const places = new Map<string, number[]>();
  for (const { ref, seq } of record.entries)
    if (ref !== undefined) places.set(ref, [...(places.get(ref) ?? []), seq]);
  for (const id of sent) {
    const at = places.get(id) ?? [];
    if (at.length !== 1) faults.push(`message ${id} is in the log ${at.length} times`);
  }
  for (const phone of phones) {
    faults.push(...phone.faults);
    for (const [id, seq] of phone.acknowledged)
      if (places.get(id)?.[0] !== seq)
        faults.push(`${phone.name}: ${id} was acknowledged at ${seq}, and is not there`);
    for (const { seq, hash } of phone.entries)
      if (record.entries[seq]?.hash !== hash) faults.push(`${phone.name} was shown another entry ${seq}`);
  }
  return {
    acknowledged: crew.reduce((sum, { acknowledged }) => sum + acknowledged.size, 0),
    connections: phones.reduce((sum, { connections }) => sum + connections, 0),
    faults,
  };
}

async function recordAt(url: string, token: string): Promise<z.output<typeof JobRecord>> {
  for (let tries = 0; ; tries++) {
    const answer = await get(url, '/api/record', token).catch(() => undefined);
    if (answer?.ok) return JobRecord.parse(await answer.json());
    if (tries > 100) throw new Error(`${url} does not give the record`);
    await setTimeout(200);
  }
}

/** As many ills as asked for, in any order. */
export function scheduleOf(random: Rng, length: number): Ill[] {
  const all = Object.keys(ILLS) as Ill[];
  return Array.from({ length }, () => pick(all, random));
}

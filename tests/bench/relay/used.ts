import { existsSync, readdirSync, readFileSync } from 'node:fs';

/** Ticks of the processor's clock in `/proc`, a second. */
const HZ = 100;
const NS_A_MS = 1e6;

function statOf(pid: number | string): string[] {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
  return stat.slice(stat.lastIndexOf(')') + 2).split(' ');
}

const ticks = (fields: readonly string[], places: readonly number[]): number =>
  places.reduce((sum, place) => sum + Number(fields[place]), 0);

/** As each process was seen last. */
const seen = new Map<number, number>();

/** Processor time that a process used so far, of all its threads, ms. Of one that has ended: up to when it was last looked at. */
export function processorMs(pid: number): number {
  try {
    seen.set(pid, (ticks(statOf(pid), [11, 12]) * 1000) / HZ);
  } catch {
    // It has ended.
  }
  return seen.get(pid) ?? 0;
}

/** The same of a process and those that it started, also of those that have ended, ms. */
export const processorOfTree = (pid: number): number =>
  (ticks(statOf(pid), [11, 12, 13, 14]) * 1000) / HZ +
  childrenOf(pid).reduce((sum, child) => sum + processorMs(child), 0);

/** Processes that it started and that run. */
function childrenOf(pid: number): number[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .map(Number)
    .filter((other) => {
      try {
        return Number(statOf(other)[1]) === pid;
      } catch {
        // It ended while we looked.
        return false;
      }
    });
}

/** Of each process that was asked about: its own times and those of all that it ever started, as each was seen last. */
const times = new Map<number, Map<number, readonly [ran: number, waited: number]>>();

/**
 * How long the main thread of a process, and of those that it started, was on a processor, and how long it could have been and none was
 * free, ms.
 */
export function ranAndWaited(pid: number): [ran: number, waited: number] {
  const of = times.get(pid) ?? new Map<number, readonly [number, number]>();
  times.set(pid, of);
  for (const one of [pid, ...childrenOf(pid)]) {
    if (!existsSync(`/proc/${one}/schedstat`)) continue;
    const [ran = 0, waited = 0] = readFileSync(`/proc/${one}/schedstat`, 'utf8').split(' ').map(Number);
    of.set(one, [ran / NS_A_MS, waited / NS_A_MS]);
  }
  const all = [...of.values()];
  return [all.reduce((sum, [ran]) => sum + ran, 0), all.reduce((sum, [, waited]) => sum + waited, 0)];
}

/** Memory of a process that is really there, MB; of one that has ended, none. */
export function residentMb(pid: number): number {
  if (!existsSync(`/proc/${pid}/status`)) return 0;
  const kb = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return Math.round(Number(kb ?? 0) / 1024);
}

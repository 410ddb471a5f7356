import { readdirSync, readFileSync } from 'node:fs';

/** Ticks of the processor's clock in `/proc`, a second. */
const HZ = 100;

function statOf(pid: number | string): string[] {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
  return stat.slice(stat.lastIndexOf(')') + 2).split(' ');
}

const ticks = (fields: readonly string[], places: readonly number[]): number =>
  places.reduce((sum, place) => sum + Number(fields[place]), 0);

/** Processor time that a process used so far, of all its threads, ms. */
export const processorMs = (pid: number): number => (ticks(statOf(pid), [11, 12]) * 1000) / HZ;

/** The same of a process and those that it started, also of those that have ended, ms. */
export function processorOfTree(pid: number): number {
  let sum = ticks(statOf(pid), [11, 12, 13, 14]);
  for (const other of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
    try {
      const fields = statOf(other);
      if (Number(fields[1]) === pid) sum += ticks(fields, [11, 12]);
    } catch {
      // It ended while we looked.
    }
  }
  return (sum * 1000) / HZ;
}

/** Memory of a process that is really there, MB. */
export function residentMb(pid: number): number {
  return Math.round(Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024);
}

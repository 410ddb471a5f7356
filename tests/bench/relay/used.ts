import { existsSync, readdirSync, readFileSync } from 'node:fs';

/** Ticks of the processor's clock in `/proc`, a second. */
const HZ = 100;

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

/** Memory of a process that is really there, MB; of one that has ended, none. */
export function residentMb(pid: number): number {
  if (!existsSync(`/proc/${pid}/status`)) return 0;
  const kb = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return Math.round(Number(kb ?? 0) / 1024);
}

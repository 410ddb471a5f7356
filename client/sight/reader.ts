import type { Box } from '../../src/sight/patch.ts';
import type { Look } from '../../src/sight/watch.ts';
import { type Asked, callsTo } from '../browser/calls.ts';

/** A part of a camera's frame, RGBA, and where in it the box stands. */
export interface Grabbed {
  data: Uint8ClampedArray<ArrayBuffer>;
  width: number;
  height: number;
  box: Box;
}

type Question = { do: 'learn'; grabbed: Grabbed } | { do: 'look'; grabbed: Grabbed };
export type Ask = Asked<Question>;

/** Reads displays in a worker of this page. */
export interface Reader {
  /** Keeps what the display and its surroundings look like now: a later look tells how far it moved from there. */
  learn(grabbed: Grabbed): Promise<void>;
  /** Rejects when the reader cannot be fetched. */
  look(grabbed: Grabbed): Promise<Omit<Look, 'at'>>;
  close(): void;
}

export function openReader(): Reader {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const ask = callsTo<Question>(worker);
  return {
    learn: (grabbed) => ask({ do: 'learn', grabbed }),
    look: (grabbed) => ask({ do: 'look', grabbed }, [grabbed.data.buffer]),
    close: () => worker.terminate(),
  };
}

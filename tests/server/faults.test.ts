import fc from 'fast-check';
import { describe, it } from 'vitest';
import { play, schedule } from './fault-schedule.ts';

describe('phones on lines that break, a disk that fails or is full, a server that restarts or is killed, clocks that jump', () => {
  it('R5 R8 R29: nothing is lost, nothing is twice, all see the same', { timeout: 300_000 }, async () => {
    // `npm run bench:faults` plays thousands. A schedule that failed is printed, made as short as it can be.
    await fc.assert(fc.asyncProperty(schedule, play), { numRuns: 150 });
  });
});

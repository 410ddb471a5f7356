import fc from 'fast-check';
import { play, schedule } from '../server/fault-schedule.ts';

/**
 * Thousands of schedules of faults (`npm run bench:faults -- 1000`: so many; a second number: from this seed on). The first
 * one that fails is made as short as it can be and printed, with the seed that plays it again.
 */
const [runs = 3_000, seed = Date.now() % 2 ** 31] = process.argv.slice(2).map(Number);

let played = 0;
let steps = 0;
const busy = process.cpuUsage();
const result = await fc.check(
  fc.asyncProperty(schedule, async (all) => {
    await play(all);
    played += 1;
    steps += all.length;
    if (played % 100 === 0) console.log(`${played} schedules, ${steps} steps`);
  }),
  { numRuns: runs, seed },
);
const { user, system } = process.cpuUsage(busy);
console.log(
  `${played} schedules of ${steps} steps from seed ${seed}, ${((user + system) / 1e6).toFixed(0)} s of processor time`,
);
if (result.failed) console.log(fc.defaultReportMessage(result));
else console.log('Nothing was lost, nothing was twice, and all saw the same.');
process.exit(result.failed ? 1 : 0);

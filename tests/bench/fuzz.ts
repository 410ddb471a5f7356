import fc from 'fast-check';
import { toJsonLines } from '../../src/log/json-lines.ts';
import { pairsToXlsx } from '../../src/site/pair-workbook.ts';
import { demo, headOf } from '../report/demo.ts';
import {
  checkForged,
  checkLog,
  forged,
  frames,
  PLANS,
  readBook,
  readTable,
  sendFrames,
  spoiltBook,
  spoiltLog,
  spoiltTable,
} from '../server/bad-input.ts';

/**
 * A million frames that nobody should send (`npm run bench:fuzz -- 50000`: so many; a second number: from this seed on), and
 * a table, a workbook and two logs for each hundred of them. The first one that breaks something is made as short as it can
 * be and printed. Memory is what is in use after a collection, where Node.js is started with `--expose-gc`.
 */
const [wanted = 1_000_000, seed = Date.now() % 2 ** 31] = process.argv.slice(2).map(Number);
/** Jobs of one round, each sent some fifty frames. */
const SLICE = 100;

const entries = demo.visits[0]?.entries.slice(0, 60) ?? [];
const log = toJsonLines(entries, headOf(entries));
const book = new Uint8Array(await (await pairsToXlsx(PLANS)).arrayBuffer());
const memory = () => {
  globalThis.gc?.();
  return Math.round(process.memoryUsage().heapUsed / 1e6);
};

let sent = 0;
let files = 0;
const busy = process.cpuUsage();
const hold = <T>(result: fc.RunDetails<T>) => {
  if (!result.failed) return;
  console.log(fc.defaultReportMessage(result));
  process.exit(1);
};
for (let round = 0; sent < wanted; round++) {
  const parameters = { seed: seed + round, numRuns: SLICE };
  const sending = fc.asyncProperty(frames, async (all) => {
    await sendFrames(all);
    sent += all.length;
  });
  hold(await fc.check(sending, parameters));
  hold(fc.check(fc.property(spoiltTable, readTable), parameters));
  hold(await fc.check(fc.asyncProperty(spoiltBook(book), readBook), { ...parameters, numRuns: SLICE / 4 }));
  hold(
    fc.check(
      fc.property(spoiltLog(log), (changed) => checkLog(log, changed)),
      parameters,
    ),
  );
  hold(fc.check(fc.property(forged(entries), checkForged), { ...parameters, numRuns: SLICE / 4 }));
  files += 2.5 * SLICE;
  if (round % 10 === 0) console.log(`${sent} frames, ${files} files, ${memory()} MB`);
}
const { user, system } = process.cpuUsage(busy);
console.log(
  `${sent} frames and ${files} files from seed ${seed}, ${((user + system) / 1e6).toFixed(0)} s of processor time, ${memory()} MB. Nothing broke.`,
);

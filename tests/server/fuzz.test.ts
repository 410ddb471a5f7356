import fc from 'fast-check';
import { describe, it } from 'vitest';
import { toJsonLines } from '../../src/log/json-lines.ts';
import { JobOpened } from '../../src/protocol/jobs.ts';
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
  request,
  sendFrames,
  sendRequest,
  spoiltBook,
  spoiltLog,
  spoiltTable,
} from './bad-input.ts';
import { Desk } from './desk.ts';
import { serve } from './house.ts';
import { openJob } from './phone.ts';

const OFTEN = { burst: 1e9, perSecond: 1e9 };

// `npm run bench:fuzz` sends a million frames, and as many more of the others as there is time for.
describe('input that nobody should send, with good tokens and ids', { timeout: 300_000 }, () => {
  it('R9 R10 R23: no frame and no sound breaks anything, and what is acknowledged is in the log once', async () => {
    await fc.assert(fc.asyncProperty(frames, sendFrames), { numRuns: 40 });
  });

  it('R32: every request is answered or refused in the words of the protocol', async () => {
    const limits = {
      opensPerAddress: OFTEN,
      siteWritesPerAddress: OFTEN,
      guesses: OFTEN,
      guessesPerAddress: OFTEN,
    };
    const { url } = await serve({ limits });
    const site = await Desk.open(url);
    const { desk } = site;
    await desk.post('/api/site/pairs', { pairs: [{ id: 'A', name: 'Pair A' }] });
    const panel = await openJob(url);
    const { meter, adjusters } =
      demo.site.flatMap(({ fact }) => (fact.type === 'pair-planned' ? [fact.pair] : []))[0] ?? {};
    const visit = JobOpened.parse(
      await (await desk.post('/api/site/jobs', { pair: 'A', device: '', meter, adjusters })).json(),
    );
    const tokens = {
      panel: panel.token,
      watcher: visit.watch,
      desk: site.desk.token,
      reader: site.reader.token,
    };
    await fc.assert(
      fc.asyncProperty(request, (one) => sendRequest(url, tokens, visit.job, one)),
      { numRuns: 250 },
    );
  });

  it('a table of pairs is read or its faults are named', async () => {
    fc.assert(fc.property(spoiltTable, readTable), { numRuns: 400 });
  });

  it('a workbook is read or its faults are named', async () => {
    const book = new Uint8Array(await (await pairsToXlsx(PLANS)).arrayBuffer());
    await fc.assert(fc.asyncProperty(spoiltBook(book), readBook), { numRuns: 150 });
  });

  it('a log file is checked to its end, and no change of it passes', () => {
    const entries = demo.visits[0]?.entries.slice(0, 60) ?? [];
    const log = toJsonLines(entries, headOf(entries));
    checkLog(log, log);
    fc.assert(fc.property(forged(entries), checkForged), { numRuns: 60 });
    fc.assert(
      fc.property(spoiltLog(log), (changed) => checkLog(log, changed)),
      { numRuns: 400 },
    );
  });
});

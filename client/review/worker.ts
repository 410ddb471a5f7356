/// <reference lib="webworker" />
import { headingOf } from '../../src/record/heading.ts';
import type { Answered } from '../browser/calls.ts';
import { readLog } from '../browser/logs.ts';
import { hasBeside } from './beside.ts';
import { linesOf } from './finding-lines.ts';
import { extended, type Known, recordOf } from './grown.ts';
import { momentAfter, momentOf } from './moment.ts';
import type { Ask, Opened, Worked } from './record-worker.ts';

/**
 * Reads, checks and folds the log of a record page beside the page: of a long job that takes a slow phone seconds, in which
 * the page would neither draw nor answer.
 */
let known: Known | undefined;

function worked({ log: { head }, record }: Known): Worked {
  const { fault, overview, series, final, state } = record;
  const { setup } = state;
  return {
    head,
    record: { fault, overview, series, final, state: { setup } },
    // A job's own link shows nothing of a site, and practice is never calm.
    heading: headingOf(record, setup?.practice ? undefined : []),
    lines: linesOf(record),
    hasBeside: hasBeside(state),
    moment: momentOf(record),
  };
}

async function answer(ask: Ask): Promise<Opened | Worked | ReturnType<typeof momentAfter>> {
  if (ask.do === 'open') {
    const { log } = await readLog('/api/record', ask.token);
    known = recordOf(log);
    return { entries: log.entries, ...worked(known) };
  }
  if (!known) throw new Error('no log is open');
  if (ask.do === 'moment') return momentAfter(known.log.entries, ask.count);
  known = recordOf(extended(known.log, ask.entries), known);
  return worked(known);
}

addEventListener('message', async ({ data }: MessageEvent<Ask>) => {
  const { id } = data;
  const told: Answered = await answer(data).then(
    (value) => ({ id, value }),
    (error: Error) => ({ id, failed: error.message }),
  );
  postMessage(told);
});

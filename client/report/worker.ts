/// <reference lib="webworker" />
import { loadReport, type Wanted } from './load.ts';
import type { Told } from './use-report.ts';

/**
 * Reads and checks all logs of a report and builds its parts, beside the page: on a slow phone that takes seconds, in which
 * the page would neither draw nor answer.
 */
const tell = (told: Told): void => postMessage(told);

addEventListener('message', ({ data }: MessageEvent<Wanted>) => {
  loadReport(data, (progress) => tell({ progress })).then(
    (value) => tell({ value }),
    (error: Error) => tell({ trouble: error.message }),
  );
});

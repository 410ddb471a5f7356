import { setImmediate as turn } from 'node:timers/promises';
import type { CheckedLog } from '../../src/log/fault.ts';
import type { JobId } from '../../src/model/ids.ts';
import { jobReport, type ReportOptions, SiteReport } from '../../src/report/build.ts';
import type { Part } from '../../src/report/report.ts';
import type { MakeReport } from './jobs.ts';
import { ReportPdf } from './pdf.ts';

/** Reads a log from end to end, and checks it where it lies. */
export type ReadLog = (job: JobId) => Promise<CheckedLog>;

/** The report on one job. Rejects with `RangeError` on an unknown time zone. */
export const jobPdf = async (log: CheckedLog, zone: string, at: number): Promise<Buffer> =>
  print(jobReport(log, zone), at, () => {});

/** A site's report, ready to be made. Between two pairs the server does its other work. */
export function sitePdf(
  site: CheckedLog,
  options: ReportOptions,
  read: ReadLog,
): { total: number; make: MakeReport } {
  const report = new SiteReport(site, options);
  const { pairs } = report;
  const make: MakeReport = async (tell) => {
    // Reading a pair's logs is half the work, printing its page the other half.
    for (const [index, pair] of pairs.entries()) {
      const visits: CheckedLog[] = [];
      for (const { job } of pair.visits) visits.push(await read(job));
      report.add(pair, visits);
      tell(Math.floor((index + 1) / 2));
      await turn();
    }
    return print(report.parts(), options.at, (printed) => tell(Math.floor((pairs.length + printed - 1) / 2)));
  };
  return { total: pairs.length, make };
}

async function print(parts: readonly Part[], at: number, tell: (printed: number) => void): Promise<Buffer> {
  const pdf = new ReportPdf(parts, { title: parts[0]?.title ?? '', at });
  for (const part of parts) {
    pdf.count(part);
    await turn();
  }
  for (const [index, part] of parts.entries()) {
    pdf.print(part);
    tell(index + 1);
    await turn();
  }
  return pdf.end();
}

import { setImmediate as turn } from 'node:timers/promises';
import type { CheckedLog } from '../../src/log/fault.ts';
import type { JobId, Seq } from '../../src/model/ids.ts';
import { jobReport, type ReportOptions, SiteReport } from '../../src/report/build.ts';
import { photosIn, withoutPictures } from '../../src/report/photos.ts';
import type { Part, ReportPhoto } from '../../src/report/report.ts';
import type { MakeReport } from './jobs.ts';
import { ReportPdf } from './pdf.ts';

/** Reads a log from end to end, and checks it where it lies. */
export type ReadLog = (job: JobId) => Promise<CheckedLog>;

/** The picture of a photo; undefined where it is lost. */
export type ReadPicture = (photo: ReportPhoto) => Promise<Uint8Array | undefined>;

/** Bytes of pictures in one file: it is made in memory. */
export const PICTURES_MOST = 64e6;

/** The report on one job. Rejects with `RangeError` on an unknown time zone. */
export const jobPdf = async (
  log: CheckedLog,
  zone: string,
  at: number,
  pictureOf: ReadPicture,
): Promise<Buffer> => print(jobReport(log, zone), at, pictureOf, () => {});

/** A site's report, ready to be made. Between two pairs the server does its other work. */
export function sitePdf(
  site: CheckedLog,
  options: ReportOptions,
  read: ReadLog,
  pictureOf: ReadPicture,
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
    return print(report.parts(), options.at, pictureOf, (printed) =>
      tell(Math.floor((pairs.length + printed - 1) / 2)),
    );
  };
  return { total: pairs.length, make };
}

async function print(
  all: readonly Part[],
  at: number,
  pictureOf: ReadPicture,
  tell: (printed: number) => void,
): Promise<Buffer> {
  const bytes = all.flatMap(photosIn).reduce((sum, photo) => sum + photo.bytes, 0);
  const parts = bytes > PICTURES_MOST ? all.map(withoutPictures) : all;
  const pdf = new ReportPdf(parts, { title: parts[0]?.title ?? '', at });
  for (const part of parts) {
    pdf.count(part);
    await turn();
  }
  for (const [index, part] of parts.entries()) {
    const pictures = new Map<Seq, Uint8Array>();
    for (const photo of photosIn(part)) {
      const picture = await pictureOf(photo);
      if (picture) pictures.set(photo.photo, picture);
    }
    pdf.print(part, pictures);
    tell(index + 1);
    await turn();
  }
  return pdf.end();
}

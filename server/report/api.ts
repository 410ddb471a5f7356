import { type Context, Hono } from 'hono';
import type { Logger } from 'pino';
import { isPractice } from '../../src/log/practice.ts';
import type { Fingerprint } from '../../src/log/signed-head.ts';
import type { JobId } from '../../src/model/ids.ts';
import {
  badFieldText,
  NO_REPORT,
  PRACTICE_NOT_KEPT,
  SITE_REPORT_ELSEWHERE,
} from '../../src/phrases/bad-requests.ts';
import { TOO_MANY_REPORTS } from '../../src/phrases/limits.ts';
import { NO_SITE_LINK, revokedText, UNKNOWN_LINK } from '../../src/phrases/links.ts';
import { REPORT_FAILED } from '../../src/phrases/log-failures.ts';
import { TimeZone } from '../../src/protocol/report.ts';
import { ROUTES } from '../../src/protocol/routes.ts';
import { isSiteLog, SiteReport } from '../../src/report/build.ts';
import { blockOf } from '../guard/guesses.ts';
import type { Limits } from '../guard/limits.ts';
import type { HeavyWork } from '../guard/turns.ts';
import { addressOf, type Env, passOf, read, refuse } from '../http/http.ts';
import { answer } from '../http/route.ts';
import { picture } from '../photos/photos.ts';
import type { Clock } from '../process/clock.ts';
import { checkedLog } from '../record/files.ts';
import type { Store } from '../store/store.ts';
import { ReportJobs } from './jobs.ts';
import type { ReadPicture } from './make.ts';
import { ReportThread } from './thread.ts';

export interface ReportApiDeps {
  store: Store;
  clock: Clock;
  threads: ReportThreads;
  heavy: HeavyWork;
  limits: Limits;
  log: Logger;
  /** Of the key that signs the heads. */
  fingerprint: Fingerprint;
}

/** One for jobs and one for sites, so that whoever asks for a page does not wait for a book. */
export class ReportThreads {
  readonly job = new ReportThread();
  readonly site = new ReportThread();

  async close(): Promise<void> {
    await Promise.all([this.job.close(), this.site.close()]);
  }
}

/** Reports as PDF: a job's is made at once, a site's in the background. */
export function reportApi({
  store,
  clock,
  threads,
  heavy,
  limits,
  log,
  fingerprint,
}: ReportApiDeps): Hono<Env> {
  const app = new Hono<Env>();
  const jobs = new ReportJobs(
    heavy.siteReports,
    limits.siteReports,
    () => performance.now(),
    (error) => log.error({ err: error }, 'a report could not be made'),
  );

  const readLog = async (job: JobId) => ({ ...(await checkedLog(store, job)), key: fingerprint });
  const pictureOf: ReadPicture = async ({ job, photo }) => {
    const found = await picture(store, job, photo);
    return found.kind === 'ok' ? found.value : undefined;
  };

  answer(app, ROUTES.reportPdf, async (c) => {
    const zone = TimeZone.safeParse(c.req.query('zone') ?? 'UTC');
    if (!zone.success) {
      return refuse(c, 'bad-message', badFieldText(['zone'], zone.error.issues[0]?.message ?? ''));
    }
    const pass = await passOf(c, store);
    if (!pass) return refuse(c, 'bad-token', UNKNOWN_LINK);
    if (pass.revoked) return refuse(c, pass.revoked, revokedText(pass.revoked, pass.role));
    const { job } = pass;
    const making = heavy.jobReports.take({ key: job, place: blockOf(addressOf(c)) }, async () => {
      const record = await readLog(job);
      if (isSiteLog(record)) return SITE_REPORT_ELSEWHERE;
      if (isPractice(record.entries)) return PRACTICE_NOT_KEPT;
      const wanted = { job: record, zone: zone.data, at: clock.now() };
      return threads.job.make(wanted, limits.jobReportWithinMs, { readLog, pictureOf });
    });
    if (!making) return refuse(c, 'too-fast', TOO_MANY_REPORTS);
    const made = await making;
    return typeof made === 'string' ? refuse(c, 'bad-message', made) : pdf(c, job, made);
  });

  answer(app, ROUTES.beginReport, (c) =>
    onSite(c, async (site) => {
      const body = await read(c, ROUTES.beginReport.body);
      if (body.kind === 'refused') return refuse(c, body.reason, body.text);
      const { pairs: only, zone } = body.value;
      const options = { zone, at: clock.now(), ...(only && { only }) };
      const total = new SiteReport(site, options).pairs.length;
      const begun = jobs.begin(site.head.job, blockOf(addressOf(c)), total, (tell) =>
        threads.site.make({ site, options }, limits.siteReportWithinMs, { readLog, pictureOf, tell }),
      );
      if (!begun) return refuse(c, 'too-fast', TOO_MANY_REPORTS);
      return c.json(begun, 202);
    }),
  );
  answer(app, ROUTES.reportProgress, (c) =>
    onSite(c, ({ head }) => {
      const progress = jobs.progress(head.job, c.req.query('id') ?? '');
      if (progress === 'unknown') return refuse(c, 'bad-target', NO_REPORT, 404);
      if (progress === 'failed') return refuse(c, 'store-failed', REPORT_FAILED);
      return c.json(progress);
    }),
  );
  answer(app, ROUTES.siteReportPdf, (c) =>
    onSite(c, ({ head }) => {
      const file = jobs.file(head.job, c.req.query('id') ?? '');
      return file ? pdf(c, head.job, file) : refuse(c, 'bad-target', NO_REPORT, 404);
    }),
  );
  return app;

  /** Answers both tokens of a site, with the site's own log. */
  async function onSite(
    c: Context<Env>,
    give: (site: Awaited<ReturnType<typeof checkedLog>>) => Response | Promise<Response>,
  ): Promise<Response> {
    const pass = await passOf(c, store);
    const site = pass && (await readLog(pass.job));
    if (!site || !isSiteLog(site)) {
      return refuse(c, 'bad-token', NO_SITE_LINK);
    }
    if (pass.revoked) return refuse(c, pass.revoked, revokedText(pass.revoked, pass.role));
    return give(site);
  }
}

function pdf(c: Context, name: string, file: Buffer): Response {
  c.header('Content-Type', 'application/pdf');
  c.header('Content-Disposition', `attachment; filename="ladderline-${name}.pdf"`);
  return c.body(new Uint8Array(file));
}

import * as z from 'zod/mini';
import { JobId } from '../model/ids.ts';
import type { ReadKind } from '../model/read-kinds.ts';
import {
  Accept,
  Access,
  Accounts,
  AddPasskey,
  EndSession,
  Invited,
  InvitedHolder,
  InviteHolder,
  Leave,
  NewPasskey,
  OwnAccount,
  RemovePasskey,
  SignedIn,
  SignIn,
  SignInChallenge,
  WithdrawHolder,
} from './accounts.ts';
import { Ask, AskAnswer, Asked } from './ask.ts';
import { Enter, Entered } from './enter.ts';
import { Figures } from './figures.ts';
import { HeadsConsistency, HeadsTree, ServerKey } from './heads.ts';
import { Health, Live } from './health.ts';
import { BringJob, JobBrought, JobOpened, JobRecord, Join, Joined, OpenJob } from './jobs.ts';
import { Keys, WithdrawKey, WithdrawVisitKey } from './keys.ts';
import { RemovePhoto, TakePhoto, WantPhoto } from './photos.ts';
import { Reads, WantReads } from './reads.ts';
import { ReportBegun, ReportId, ReportProgress, TimeZone, WantReport } from './report.ts';
import {
  BeginVisit,
  ChooseUnits,
  CloseIssue,
  DefineSteps,
  DropPair,
  Logged,
  OpenSite,
  PlanPairs,
  SignRecord,
  SiteFindings,
  SiteOpened,
  SiteView,
  WriteHandOver,
} from './site.ts';
import { WantSound } from './sounds.ts';
import { BeginSso, FinishSso, SsoBegun } from './sso.ts';
import { TrustInfo } from './trust.ts';

/**
 * What a request carries: nothing, the token of a question to the panel, one of a job (seat or watcher), one of a site, that of a site's desk, that of who
 * runs the server, the cookie of somebody who is signed in, or of an administrator.
 */
export type Bearer = 'anyone' | 'asker' | 'job' | 'site' | 'desk' | 'owner' | 'holder' | 'administrator';

/** One address of the server: what is sent to it, and what it answers when nothing is refused. */
export interface Route {
  readonly method: 'get' | 'post';
  /** Below `/api`. */
  readonly path: string;
  readonly bearer: Bearer;
  /** Besides it the cookie of who came in, where the owner asks for a passphrase or an account (R64, R120). */
  readonly entrance?: true;
  /** What of the records its answer shows: it is written down who was given it (R181). */
  readonly reads?: ReadKind;
  /** In one sentence. */
  readonly says: string;
  /** The fields of the part after `?`. */
  readonly query?: z.ZodMiniObject;
  /** JSON of this shape, or another type of file. */
  readonly body?: z.ZodMiniType | string;
  /** JSON of this shape, or another type of file. */
  readonly answer: { readonly status: 200 | 201 | 202; readonly is: z.ZodMiniType | string };
}

const PDF = 'application/pdf';
const JSON_LINES = 'application/jsonl';
const CSV = 'text/csv';
const ZIP = 'application/zip';
const JSON_TYPE = 'application/json';
const PLAIN = 'text/plain';

const JPEG = 'image/jpeg';
const WAV = 'audio/wav';

const OfVisit = z.object({ job: JobId.check(z.describe('The visit.')) });
const PairOfVisit = z.object({ job: z.optional(JobId.check(z.describe('Only the pair of this visit.'))) });
const InZone = z.object({
  zone: z.optional(TimeZone.check(z.describe('The IANA time zone for the times; UTC when left out.'))),
});
const OfReport = z.object({ id: ReportId.check(z.describe('The report.')) });
const size = z.int().check(z.nonnegative(), z.describe('How many signed heads the tree has.'));
const TwoTrees = z.object({ from: size, to: size });
const ToSay = z.object({
  text: z.string().check(z.minLength(1), z.maxLength(400), z.describe('With numbers in words.')),
  rate: z.optional(z.number().check(z.minimum(0.7), z.maximum(1.6), z.describe('1 when left out.'))),
});
const logged = { status: 200, is: Logged } as const;

/** Every address below `/api` but the websocket. The server registers from this table, and has no other. */
export const ROUTES = {
  openJob: {
    method: 'post',
    path: '/jobs',
    bearer: 'anyone',
    entrance: true,
    says: 'Opens a job, and gives the caller the seat at the panel.',
    body: OpenJob,
    answer: { status: 201, is: JobOpened },
  },
  bringJob: {
    method: 'post',
    path: '/jobs/brought',
    bearer: 'anyone',
    entrance: true,
    says: 'Takes over the log of a job that one phone has kept alone.',
    body: BringJob,
    answer: { status: 201, is: JobBrought },
  },
  enter: {
    method: 'post',
    path: '/enter',
    bearer: 'anyone',
    says: 'Shows the passphrase, where one is needed to open sites and jobs.',
    body: Enter,
    answer: { status: 200, is: Entered },
  },
  access: {
    method: 'get',
    path: '/access',
    bearer: 'anyone',
    says: 'Who may open sites and jobs here, and what the cookie of the caller shows.',
    answer: { status: 200, is: Access },
  },
  leave: {
    method: 'post',
    path: '/leave',
    bearer: 'anyone',
    says: 'Ends the session of the caller, or all of the same account.',
    body: Leave,
    answer: { status: 200, is: Entered },
  },
  signInChallenge: {
    method: 'post',
    path: '/account/challenge',
    bearer: 'anyone',
    says: 'What a browser needs to use a passkey.',
    answer: { status: 200, is: SignInChallenge },
  },
  signIn: {
    method: 'post',
    path: '/account/sign-in',
    bearer: 'anyone',
    says: 'Signs in with a passkey.',
    body: SignIn,
    answer: { status: 200, is: SignedIn },
  },
  beginSso: {
    method: 'post',
    path: '/account/sso',
    bearer: 'anyone',
    says: 'Begins to sign in at the provider of the firm (OpenID Connect).',
    body: BeginSso,
    answer: { status: 200, is: SsoBegun },
  },
  finishSso: {
    method: 'post',
    path: '/account/sso/finish',
    bearer: 'anyone',
    says: 'Signs in who came back from the provider.',
    body: FinishSso,
    answer: { status: 200, is: SignedIn },
  },
  invited: {
    method: 'post',
    path: '/account/invited',
    bearer: 'anyone',
    says: 'What a browser needs to make the passkey that an invitation is for.',
    body: Invited,
    answer: { status: 200, is: NewPasskey },
  },
  acceptInvitation: {
    method: 'post',
    path: '/account/accept',
    bearer: 'anyone',
    says: 'Uses an invitation up, makes the account, and signs in.',
    body: Accept,
    answer: { status: 200, is: SignedIn },
  },
  ownAccount: {
    method: 'get',
    path: '/account',
    bearer: 'holder',
    says: 'The account of the caller, its passkeys, and where it is signed in.',
    answer: { status: 200, is: OwnAccount },
  },
  passkeyChallenge: {
    method: 'post',
    path: '/account/passkey/challenge',
    bearer: 'holder',
    says: 'What a browser needs to make one more passkey.',
    answer: { status: 200, is: NewPasskey },
  },
  addPasskey: {
    method: 'post',
    path: '/account/passkey',
    bearer: 'holder',
    says: 'Adds a passkey to the account of the caller.',
    body: AddPasskey,
    answer: { status: 200, is: OwnAccount },
  },
  removePasskey: {
    method: 'post',
    path: '/account/passkey/remove',
    bearer: 'holder',
    says: 'Removes a passkey of the caller, but not the last one.',
    body: RemovePasskey,
    answer: { status: 200, is: OwnAccount },
  },
  endSession: {
    method: 'post',
    path: '/account/session/end',
    bearer: 'holder',
    says: 'Signs another device of the caller out.',
    body: EndSession,
    answer: { status: 200, is: OwnAccount },
  },
  accounts: {
    method: 'get',
    path: '/accounts',
    bearer: 'administrator',
    says: 'Everybody who has an account or an invitation.',
    answer: { status: 200, is: Accounts },
  },
  invite: {
    method: 'post',
    path: '/accounts/invite',
    bearer: 'administrator',
    says: 'Invites somebody.',
    body: InviteHolder,
    answer: { status: 201, is: InvitedHolder },
  },
  withdrawHolder: {
    method: 'post',
    path: '/accounts/withdraw',
    bearer: 'administrator',
    says: 'Withdraws an account or an invitation.',
    body: WithdrawHolder,
    answer: { status: 200, is: Accounts },
  },
  join: {
    method: 'post',
    path: '/join',
    bearer: 'anyone',
    says: 'Uses a join code up, and gives the seat.',
    body: Join,
    answer: { status: 200, is: Joined },
  },
  askPanel: {
    method: 'post',
    path: '/ask',
    bearer: 'anyone',
    says: 'Asks the panel of a job for the seat at the emitter, without a code.',
    body: Ask,
    answer: { status: 201, is: Asked },
  },
  askAnswer: {
    method: 'get',
    path: '/ask',
    bearer: 'asker',
    says: 'What the panel has answered.',
    answer: { status: 200, is: AskAnswer },
  },
  record: {
    method: 'get',
    path: '/record',
    bearer: 'job',
    reads: 'record',
    says: 'The whole log with its head.',
    answer: { status: 200, is: JobRecord },
  },
  exportLines: {
    method: 'get',
    path: '/export.jsonl',
    bearer: 'job',
    reads: 'export',
    says: 'The whole log as JSON Lines; `/api/export.schema.json` describes a line.',
    answer: { status: 200, is: JSON_LINES },
  },
  exportCsv: {
    method: 'get',
    path: '/export.csv',
    bearer: 'job',
    reads: 'export',
    says: 'The whole log as CSV; `/api/export.csv-metadata.json` describes the columns.',
    answer: { status: 200, is: CSV },
  },
  exportArchive: {
    method: 'get',
    path: '/export.zip',
    bearer: 'job',
    reads: 'export',
    says: 'The whole log as JSON Lines, with the pictures of its photos and the sounds that are kept.',
    answer: { status: 200, is: ZIP },
  },
  reportPdf: {
    method: 'get',
    path: '/report.pdf',
    bearer: 'job',
    reads: 'report',
    says: 'The report on a job.',
    query: InZone,
    answer: { status: 200, is: PDF },
  },
  photo: {
    method: 'get',
    path: '/photo',
    bearer: 'job',
    reads: 'record',
    says: 'The picture of a photo.',
    query: WantPhoto,
    answer: { status: 200, is: JPEG },
  },
  sound: {
    method: 'get',
    path: '/sound',
    bearer: 'job',
    reads: 'record',
    says: 'The sound of words that were heard, where it is kept.',
    query: WantSound,
    answer: { status: 200, is: WAV },
  },
  takePhoto: {
    method: 'post',
    path: '/photo',
    bearer: 'job',
    says: 'Puts a photo into the record; the picture is the body.',
    query: TakePhoto,
    body: JPEG,
    answer: { status: 201, is: Logged },
  },
  removePhoto: {
    method: 'post',
    path: '/photo/remove',
    bearer: 'job',
    says: 'Removes the picture of a photo; its entry stays.',
    body: RemovePhoto,
    answer: logged,
  },
  keys: {
    method: 'get',
    path: '/keys',
    bearer: 'job',
    reads: 'record',
    says: 'Who has a key: to the job, for its panel; to the site, for its desk.',
    answer: { status: 200, is: Keys },
  },
  withdrawKey: {
    method: 'post',
    path: '/keys/withdraw',
    bearer: 'job',
    says: 'Takes a key away.',
    body: WithdrawKey,
    answer: logged,
  },
  siteKeys: {
    method: 'get',
    path: '/site/keys',
    bearer: 'desk',
    reads: 'record',
    says: 'Who has a key to a visit.',
    query: OfVisit,
    answer: { status: 200, is: Keys },
  },
  siteWithdrawKey: {
    method: 'post',
    path: '/site/keys/withdraw',
    bearer: 'desk',
    says: 'Takes a key to a visit away.',
    body: WithdrawVisitKey,
    answer: logged,
  },
  voice: {
    method: 'get',
    path: '/voice',
    bearer: 'job',
    says: 'A sentence as sound.',
    query: ToSay,
    answer: { status: 200, is: 'audio/wav' },
  },
  openSite: {
    method: 'post',
    path: '/sites',
    bearer: 'anyone',
    entrance: true,
    says: 'Opens a site, and gives its two tokens.',
    body: OpenSite,
    answer: { status: 201, is: SiteOpened },
  },
  site: {
    method: 'get',
    path: '/site',
    bearer: 'site',
    reads: 'board',
    says: 'The board.',
    query: PairOfVisit,
    answer: { status: 200, is: SiteView },
  },
  siteFindings: {
    method: 'get',
    path: '/site/findings',
    bearer: 'site',
    reads: 'board',
    says: 'The findings of every visit, and of the site.',
    query: PairOfVisit,
    answer: { status: 200, is: SiteFindings },
  },
  siteRecord: {
    method: 'get',
    path: '/site/record',
    bearer: 'site',
    reads: 'record',
    says: 'The whole log of a visit with its head.',
    query: OfVisit,
    answer: { status: 200, is: JobRecord },
  },
  siteExportLines: {
    method: 'get',
    path: '/site/export.jsonl',
    bearer: 'site',
    reads: 'export',
    says: 'The whole log of a visit as JSON Lines.',
    query: OfVisit,
    answer: { status: 200, is: JSON_LINES },
  },
  siteExportCsv: {
    method: 'get',
    path: '/site/export.csv',
    bearer: 'site',
    reads: 'export',
    says: 'The whole log of a visit as CSV.',
    query: OfVisit,
    answer: { status: 200, is: CSV },
  },
  siteExportArchive: {
    method: 'get',
    path: '/site/export.zip',
    bearer: 'site',
    reads: 'export',
    says: 'The whole log of a visit as JSON Lines, with the pictures of its photos and the sounds that are kept.',
    query: OfVisit,
    answer: { status: 200, is: ZIP },
  },
  planPairs: {
    method: 'post',
    path: '/site/pairs',
    bearer: 'desk',
    says: 'Plans pairs: all of them or none.',
    body: PlanPairs,
    answer: logged,
  },
  dropPair: {
    method: 'post',
    path: '/site/drop',
    bearer: 'desk',
    says: 'Takes a pair out of the site.',
    body: DropPair,
    answer: logged,
  },
  chooseUnits: {
    method: 'post',
    path: '/site/units',
    bearer: 'desk',
    says: 'Chooses what the figures of the site are read and written in.',
    body: ChooseUnits,
    answer: logged,
  },
  defineSteps: {
    method: 'post',
    path: '/site/steps',
    bearer: 'desk',
    says: 'Defines the steps of cause and effect of visits that begin from here on.',
    body: DefineSteps,
    answer: logged,
  },
  beginVisit: {
    method: 'post',
    path: '/site/jobs',
    bearer: 'desk',
    says: 'Begins a visit to a pair, and gives the caller the seat at the panel.',
    body: BeginVisit,
    answer: { status: 201, is: JobOpened },
  },
  signRecord: {
    method: 'post',
    path: '/site/sign',
    bearer: 'desk',
    entrance: true,
    says: 'Signs the record of a visit, up to the head that was read.',
    body: SignRecord,
    answer: logged,
  },
  closeIssue: {
    method: 'post',
    path: '/site/close-issue',
    bearer: 'desk',
    says: 'Answers for a test that failed.',
    body: CloseIssue,
    answer: logged,
  },
  handOver: {
    method: 'post',
    path: '/site/hand-over',
    bearer: 'desk',
    says: 'Writes down something for the hand-over of an accepted pair.',
    body: WriteHandOver,
    answer: logged,
  },
  sitePhoto: {
    method: 'get',
    path: '/site/photo',
    bearer: 'site',
    reads: 'record',
    says: 'The picture of a photo.',
    query: WantPhoto,
    answer: { status: 200, is: JPEG },
  },
  siteSound: {
    method: 'get',
    path: '/site/sound',
    bearer: 'site',
    reads: 'record',
    says: 'The sound of words that were heard, where it is kept.',
    query: WantSound,
    answer: { status: 200, is: WAV },
  },
  siteTakePhoto: {
    method: 'post',
    path: '/site/photo',
    bearer: 'desk',
    says: 'Puts a photo into the record; the picture is the body.',
    query: TakePhoto,
    body: JPEG,
    answer: { status: 201, is: Logged },
  },
  siteRemovePhoto: {
    method: 'post',
    path: '/site/photo/remove',
    bearer: 'desk',
    says: 'Removes the picture of a photo; its entry stays.',
    body: RemovePhoto,
    answer: logged,
  },
  beginReport: {
    method: 'post',
    path: '/site/report',
    bearer: 'site',
    says: 'Begins the report of a site.',
    body: WantReport,
    answer: { status: 202, is: ReportBegun },
  },
  reportProgress: {
    method: 'get',
    path: '/site/report',
    bearer: 'site',
    says: 'How far the report of a site is.',
    query: OfReport,
    answer: { status: 200, is: ReportProgress },
  },
  siteReportPdf: {
    method: 'get',
    path: '/site/report.pdf',
    bearer: 'site',
    reads: 'report',
    says: 'The report of a site, once it is ready.',
    query: OfReport,
    answer: { status: 200, is: PDF },
  },
  figures: {
    method: 'get',
    path: '/figures',
    bearer: 'holder',
    reads: 'figures',
    says: 'The figures over all sites, for a supervisor.',
    answer: { status: 200, is: Figures },
  },
  reads: {
    method: 'get',
    path: '/reads',
    bearer: 'administrator',
    reads: 'reads',
    says: 'Who read what, the newest first.',
    query: WantReads,
    answer: { status: 200, is: Reads },
  },
  serverKey: {
    method: 'get',
    path: '/key',
    bearer: 'anyone',
    says: 'With which key this server signs the heads of its logs.',
    answer: { status: 200, is: ServerKey },
  },
  heads: {
    method: 'get',
    path: '/heads',
    bearer: 'anyone',
    says: 'The signed head of the tree over all heads that this server signed.',
    answer: { status: 200, is: HeadsTree },
  },
  headsConsistency: {
    method: 'get',
    path: '/heads/consistency',
    bearer: 'anyone',
    says: 'That an older tree is the beginning of a later one (RFC 6962).',
    query: TwoTrees,
    answer: { status: 200, is: HeadsConsistency },
  },
  trust: {
    method: 'get',
    path: '/trust',
    bearer: 'anyone',
    says: 'How a phone comes to a page that may use its microphone.',
    answer: { status: 200, is: TrustInfo },
  },
  health: {
    method: 'get',
    path: '/health',
    bearer: 'anyone',
    says: 'Whether the server can serve: the log can be written, its disk has room, and it does not stop.',
    answer: { status: 200, is: Health },
  },
  live: {
    method: 'get',
    path: '/live',
    bearer: 'anyone',
    says: 'Whether the server answers at all.',
    answer: { status: 200, is: Live },
  },
  metrics: {
    method: 'get',
    path: '/metrics',
    bearer: 'owner',
    says: 'How the server does, for Prometheus.',
    answer: { status: 200, is: PLAIN },
  },
  lineSchema: {
    method: 'get',
    path: '/export.schema.json',
    bearer: 'anyone',
    says: 'JSON Schema of a line of an export.',
    answer: { status: 200, is: JSON_TYPE },
  },
  csvMetadata: {
    method: 'get',
    path: '/export.csv-metadata.json',
    bearer: 'anyone',
    says: 'CSV on the Web metadata of an export.',
    answer: { status: 200, is: JSON_TYPE },
  },
  openApi: {
    method: 'get',
    path: '/openapi.json',
    bearer: 'anyone',
    says: 'All of this as OpenAPI 3.1.',
    answer: { status: 200, is: JSON_TYPE },
  },
  asyncApi: {
    method: 'get',
    path: '/asyncapi.json',
    bearer: 'anyone',
    says: 'The websocket as AsyncAPI 3.0.',
    answer: { status: 200, is: JSON_TYPE },
  },
} as const satisfies Record<string, Route>;

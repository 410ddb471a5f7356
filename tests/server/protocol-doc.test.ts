import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type * as z from 'zod/mini';
import { LIMITS } from '../../server/guard/limits.ts';
import { Entry } from '../../src/model/entry.ts';
import { kindsOf } from '../../src/model/kinds.ts';
import { MAX_PAIRS } from '../../src/model/pair-plan.ts';
import { AdjusterProfile, MeterProfile } from '../../src/model/profile.ts';
import { Refusal } from '../../src/model/refusal.ts';
import * as accounts from '../../src/protocol/accounts.ts';
import * as ask from '../../src/protocol/ask.ts';
import * as enter from '../../src/protocol/enter.ts';
import { Figures } from '../../src/protocol/figures.ts';
import * as heads from '../../src/protocol/heads.ts';
import * as jobs from '../../src/protocol/jobs.ts';
import { CODE_ALPHABET } from '../../src/protocol/join-code.ts';
import * as keys from '../../src/protocol/keys.ts';
import { Reads } from '../../src/protocol/reads.ts';
import * as report from '../../src/protocol/report.ts';
import * as site from '../../src/protocol/site.ts';
import * as socket from '../../src/protocol/socket.ts';
import * as sso from '../../src/protocol/sso.ts';
import * as trust from '../../src/protocol/trust.ts';

const doc = readFileSync('docs/protocol.md', 'utf8');
const blocks = [...doc.matchAll(/```json (\w+)\n(.*?)```/gs)].map(([, name, text]) => ({ name, text }));

const { invitationPath: _, ...accountShapes } = accounts;
const { SIGNED_IN_PATH: __, ...ssoShapes } = sso;

const SCHEMAS: Record<string, z.ZodMiniType> = {
  client: socket.ClientMessage,
  server: socket.ServerMessage,
  HttpRefusal: jobs.HttpRefusal,
  OpenJob: jobs.OpenJob,
  JobOpened: jobs.JobOpened,
  JobBrought: jobs.JobBrought,
  Join: jobs.Join,
  Joined: jobs.Joined,
  JobRecord: jobs.JobRecord,
  ...heads,
  OpenSite: site.OpenSite,
  SiteOpened: site.SiteOpened,
  PlanPairs: site.PlanPairs,
  ChooseUnits: site.ChooseUnits,
  DropPair: site.DropPair,
  Logged: site.Logged,
  BeginVisit: site.BeginVisit,
  SignRecord: site.SignRecord,
  CloseIssue: site.CloseIssue,
  WriteHandOver: site.WriteHandOver,
  DefineSteps: site.DefineSteps,
  SiteView: site.SiteView,
  SiteFindings: site.SiteFindings,
  Ask: ask.Ask,
  Asked: ask.Asked,
  AskAnswer: ask.AskAnswer,
  Keys: keys.Keys,
  WithdrawKey: keys.WithdrawKey,
  WithdrawVisitKey: keys.WithdrawVisitKey,
  ReadsShown: Reads,
  Enter: enter.Enter,
  Entered: enter.Entered,
  ...accountShapes,
  ...ssoShapes,
  Figures,
  TrustInfo: trust.TrustInfo,
  WantReport: report.WantReport,
  ReportBegun: report.ReportBegun,
  ReportProgress: report.ReportProgress,
};

const examples = blocks.flatMap(({ name, text }) =>
  (text ?? '')
    .trim()
    .split('\n')
    .map((line) => ({ name: name ?? '', line })),
);

describe('docs/protocol.md', () => {
  it.each(examples)('shows only messages that the protocol takes: $name $line', ({ name, line }) => {
    const parsed = SCHEMAS[name]?.safeParse(JSON.parse(line));
    expect(parsed?.error).toBeUndefined();
    expect(parsed?.success).toBe(true);
  });

  it.each([
    ['client', socket.ClientMessage],
    ['server', socket.ServerMessage],
  ] as const)('shows every kind of %s message', (side, union) => {
    const kinds = (kindsOf(union, 't') as string[]).sort();
    const shown = examples.filter(({ name }) => name === side).map(({ line }) => JSON.parse(line).t);
    expect([...new Set(shown)].sort()).toEqual(kinds);
  });

  it.each([
    ['Entries, hashes and `ref`', Entry.shape],
    ['Meter and adjusters', { ...MeterProfile.shape, ...AdjusterProfile.shape }],
  ])('has every field in the tables of "%s", and no other', (title, shape) => {
    const [, part = ''] = doc.split(`## ${title}\n`);
    const rows = part.split('\n## ')[0]?.matchAll(/^\| ((?:`\w+`(?:, )?)+) \|/gm) ?? [];
    const told = [...rows].flatMap(([, names = '']) => [...names.matchAll(/\w+/g)].map(([name]) => name));
    expect([...new Set(told)].sort()).toEqual(Object.keys(shape).sort());
  });

  it('names every refusal and every close code', () => {
    for (const reason of Refusal.options) expect(doc).toContain(`\`${reason}\``);
    for (const [reason, code] of Object.entries(socket.CLOSE_CODES)) {
      expect(doc).toContain(`| \`${reason}\` | ${code} |`);
    }
  });

  it('has a test for every rule, and a rule for every number in the title of a test', () => {
    const rules = [...doc.matchAll(/\*\*(R\d+)\*\*/g)].map(([, id]) => id);
    const tests = [
      'tests/server',
      'tests/stamps',
      'tests/local-name',
      'tests/postgres',
      'tests/conversation',
      'tests/client',
      'tests/e2e',
    ]
      .flatMap((folder) => readdirSync(folder).map((file) => `${folder}/${file}`))
      .filter((file) => file.endsWith('.test.ts'))
      .flatMap((file) => [...readFileSync(file, 'utf8').matchAll(/['"`](R\d+):/g)])
      .map(([, id]) => id);
    expect(new Set(rules).size).toBe(rules.length);
    expect([...new Set(tests)].sort()).toEqual([...rules].sort());
  });

  it('states the limits that the server uses', () => {
    const said = doc.replace(/\s+/g, ' ');
    expect(socket.MAX_FRAME_BYTES).toBe(65_536);
    expect(said).toContain('more than 65,536 bytes');
    expect(LIMITS.messages).toEqual({ burst: 60, perSecond: 20 });
    expect(said).toContain('60 messages at once and 20 a second');
    expect(LIMITS.refusals).toEqual({ burst: 2_000, perSecond: 200 });
    expect(said).toContain('2,000 refusals at once, then 200 a second');
    expect(LIMITS.maxSilentPerBlock).toBe(64);
    expect(said).toContain('at most 64 of one block');
    expect([LIMITS.headersWithinMs, LIMITS.requestWithinMs]).toEqual([10_000, 120_000]);
    expect(said).toContain('within 10 seconds, all of it within 2 minutes');
    expect([LIMITS.maxConnections, LIMITS.maxConnectionsPerBlock]).toEqual([4_000, 3_000]);
    expect(said).toContain('4,000 websockets at once, 3,000 of one block');
    expect(LIMITS.maxWatchers).toBe(50);
    expect(said).toContain('at most 50 watchers');
    expect([LIMITS.jobsPerDay.burst, LIMITS.sitesPerDay.burst]).toEqual([3_000, 500]);
    expect(said).toContain('3,000 jobs and 500 sites a day');
    expect([LIMITS.bytesPerDay.burst, LIMITS.logBytesPerDay.burst]).toEqual([4 * 1024 ** 3, 64 * 1024 ** 2]);
    expect(said).toContain('send 4 GiB in requests and messages (no sound); to one log 64 MiB a day');
    expect(LIMITS.siteReports).toEqual({ atOnce: 1, perKey: 2, perPlace: 6, all: 12 });
    expect(said).toContain('Two of a site and six of a block of addresses are kept at once');
    const { jobReports, spoken, talks, records, brought, boards } = LIMITS;
    expect([jobReports, spoken, talks, records, brought, boards].map(({ perKey }) => perKey)).toEqual([
      3, 6, 4, 60, 2, 60,
    ]);
    expect(said).toContain(
      '(reports of a job 3, sentences to speak 6, talks to hear 4, records and exports 60, records brought 2, boards',
    );
    expect(LIMITS.deadAfterMs).toBe(6_000);
    expect(said).toContain('after 6 seconds without');
    expect(LIMITS.codeLastsMs).toBe(15 * 60_000);
    expect(said).toContain('for fifteen minutes');
    expect(CODE_ALPHABET).toBe('23456789ABCDEFGHJKMNPQRSTUVWXYZ');
    expect(said).toContain(CODE_ALPHABET);
    expect(LIMITS.maxSiteBodyBytes).toBe(4 * 1024 * 1024);
    expect(said).toContain('`/api/site/` are limited to 4 MiB');
    expect(LIMITS.siteWritesPerAddress).toEqual({ burst: 60, perSecond: 2 });
    expect(said).toContain('60 at once and then two a second');
    expect(MAX_PAIRS).toBe(2_000);
    expect(said).toContain('a site to 2,000 pairs');
    expect(socket.MAX_TALK_MS).toBe(15_000);
    expect(said).toContain('may last 15 seconds');
    expect(LIMITS.guessesPerAddress.perSecond * 60).toBeCloseTo(5);
    expect(LIMITS.guesses.perSecond * 60).toBeCloseTo(20);
  });
});

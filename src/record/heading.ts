import { isPlanChanged, SEVERITIES, type Severity, type SiteFinding } from '../model/finding.ts';
import type { PairStatus } from '../model/pair-status.ts';
import { statusOnSite } from './status.ts';
import type { VisitRecord } from './visit-record.ts';

/** What stands above a record: its status and its findings together, so that neither can hide the other. */
export interface Heading {
  /** As it stands on the site. */
  readonly status: PairStatus;
  readonly planChanged: boolean;
  /** The log fails its check: then nothing in it is certain. */
  readonly broken: boolean;
  readonly findings: Readonly<Record<Severity, number>>;
  /**
   * `calm`: all is proven, or signed, and nothing is left to ask. `heed`: somebody must look at it. All else is `plain`.
   */
  readonly look: 'calm' | 'plain' | 'heed';
}

const CALM: ReadonlySet<PairStatus> = new Set(['proven', 'signed']);
const HEED: ReadonlySet<PairStatus> = new Set(['needs-attention', 'isolated', 'signed-not-proven']);

/** `ofSite`: what the site finds about the pair; undefined while nobody knows, and then nothing is calm. */
export function headingOf(
  record: Pick<VisitRecord, 'status' | 'findings' | 'fault'>,
  ofSite: readonly SiteFinding[] | undefined,
): Heading {
  const known = ofSite ?? [];
  const planChanged = isPlanChanged(known);
  const status = statusOnSite(record.status, planChanged);
  const broken = record.fault !== undefined;
  const all = [...record.findings, ...known];
  const findings = Object.fromEntries(
    SEVERITIES.map((severity) => [severity, all.filter((each) => each.severity === severity).length]),
  ) as Record<Severity, number>;
  const isTrouble = broken || HEED.has(status) || findings.serious > 0;
  const isCalm = ofSite !== undefined && CALM.has(status) && findings.question === 0;
  return {
    status,
    planChanged,
    broken,
    findings,
    look: isTrouble ? 'heed' : isCalm ? 'calm' : 'plain',
  };
}

import type { Severity } from '../model/finding.ts';
import type { PairStatus } from '../model/pair-status.ts';
import { STATUS_WORDS } from './statuses.ts';

interface Heading {
  readonly status: PairStatus;
  readonly planChanged: boolean;
  readonly broken: boolean;
  readonly findings: Readonly<Record<Severity, number>>;
}

const BROKEN = 'Log broken, nothing here is certain';
const ANEW = 'Plan changed, prove it anew';

/** "Needs attention: 1 serious, 2 to be asked": the status of a record is never read without its findings. */
export function headingText({ status, planChanged, broken, findings }: Heading): string {
  const { serious, question } = findings;
  const counts = [serious > 0 && `${serious} serious`, question > 0 && `${question} to be asked`].filter(
    (text) => text !== false,
  );
  const what = broken ? BROKEN : planChanged ? ANEW : STATUS_WORDS[status];
  return counts.length === 0 ? what : `${what}: ${counts.join(', ')}`;
}

export const ACCEPTED = 'Accepted on evidence';
export const ON_TRENDS = 'Accepted on trends, no reading,';
export const ACCEPTED_BY_OVERRIDE = 'Accepted by override';
/** Where no acceptance stands. */
export const HOW_FAR = {
  empty: 'Nothing is in the log yet.',
  aligning: 'Not accepted yet.',
  paused: 'Paused: no order is given now. Not accepted.',
  stopped: 'The crew stopped. Not accepted.',
} as const;

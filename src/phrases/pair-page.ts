import { type AloneWay, hasNoNumbers } from '../model/alone.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { Axis } from '../model/turns.ts';
import { ALONE_RECORD, ALONE_WAYS } from './alone.ts';
import { BAND_NOT_READ } from './looking.ts';
import { lossText, type Shown } from './units.ts';

/** The words of a pair's page in the report. */
export const pairTitle = ({ id, name }: { id: string; name: string }): string => `${id}  ${name}`;
export const pairSubtitle = (site: string, periodic: boolean): string =>
  `${site}. ${periodic ? 'Record of a periodic visit to' : 'Commissioning record of'} a beam pair.`;
export const NO_RECORD_TITLE = 'A pair without a record';
export const NO_RECORD_SUBTITLE = 'Planned beam pair, without a record.';
export const NO_LOG = 'No log yet';
export const LOG_BROKEN = 'Log broken';
export const seriousCount = (findings: number): string => `${findings} serious`;
export const NO_FINDINGS = 'None. The log was searched for all that a careful supervisor would ask.';
export const againstOthers = (finding: string): string =>
  `${finding} (compared with other records of the site)`;

/** Names of the large figures, and what is shown if there is none. */
export const FIGURE_NAMES = {
  final: 'Final reading',
  accepted: 'Accepted',
  overridden: 'Accepted by override',
  gain: 'Gain changes',
  duration: 'Alignment took',
} as const;
export const PEAK_NAMES: Record<Axis, string> = { horizontal: 'Horizontal peak', vertical: 'Vertical peak' };
export const NONE = 'none';
export const NOT_ACCEPTED = 'not accepted';
export const NO_PEAK = 'none seen';
export const NO_PEAK_NOTE = 'no readings while it was turned';
export const peakNote = (reading: string, seq: number): string => `turns; ${reading} there, #${seq}`;
export const bandText = ({ bandLow, bandHigh }: MeterProfile, alone: AloneWay | undefined): string =>
  hasNoNumbers(alone) ? BAND_NOT_READ : `band ${bandLow} to ${bandHigh}`;
export const startText = (day: string, clock: string): string => `${day}, from ${clock}`;

export const LEADS = {
  closed: 'Issue, closed',
  open: 'ISSUE, OPEN',
  override: 'Override',
  warning: 'Warning',
  remark: 'Remark',
} as const;
export const NO_ISSUES = 'None.';
export const issueText = (text: string, seq: number, closed: string): string => `${text} (#${seq})${closed}`;
export const closedText = (clock: string, seq: number, how: string): string =>
  ` Closed ${clock}, #${seq}: ${how}`;
/** `by`: a seat, or the name that a watcher typed. */
export const remarkText = (text: string, by: string, clock: string, seq: number): string =>
  `${text} (${by}, ${clock}, #${seq})`;

/** The final reading of a visit, and the reading found at the next. `lostDb`: decibels lost between the two. */
export const foundAgainText = (
  accepted: string,
  found: string,
  lostDb: number | undefined,
  shown: Shown,
): string =>
  `${accepted} accepted, ${found} found${lostDb === undefined ? '' : `: ${lostSince(lostDb, shown)} lost`}`;

/** What came back, more light than before, is told in dB: it is no part of the light. */
const lostSince = (db: number, shown: Shown): string =>
  db >= 0 ? lossText(db, shown, { places: 1 }) : `${db.toFixed(1)} dB`;

export const NOT_KNOWN = 'not known';
export const VISIT_COLUMNS = {
  day: 'Day',
  log: 'Log',
  status: 'Status then',
  found: 'At the next visit',
} as const;

export const JOB_ROWS = {
  crew: 'Crew',
  alone: 'One person alone',
  before: 'Before the work',
  after: 'After the work',
  path: 'Path',
  guidance: 'Guidance',
  profiles: 'Meter, adjusters',
} as const;
export const A_PHONE = 'a phone';
export const TOOK_OVER = ', took over';
export const moreSeats = (left: number): string => `; ${left} more in the log`;
export const notAnswered = (question: string): string => `NOT ANSWERED: ${question}`;
/** One person alone, with what the evidence of that way is worth, for whoever was not there. */
export const aloneEvidenceText = (way: AloneWay): string => `${ALONE_RECORD[way]}. ${ALONE_WAYS[way].worth}`;

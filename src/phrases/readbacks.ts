/** Said before what was understood. */
export const LEAD = {
  heard: 'Heard:',
  reading: 'Heard',
  done: 'Done:',
  accepted: 'Well done:',
  otherWay: 'Turned the other way:',
} as const;
export type Lead = (typeof LEAD)[keyof typeof LEAD];

export const readBack = (lead: Lead, what: string): string => `${lead} ${what}.`;
/** `not`: what it replaces. */
export const corrected = (now: string, not?: string): string =>
  not === undefined ? `Corrected: ${now}.` : `Corrected: ${now}, not ${not}.`;
export const takenBack = (what: string): string => `Taken back: ${what}.`;
export const noted = (remark: string): string => `Noted: ${remark}.`;
export const issueClosed = (how: string): string => `Issue closed: ${how}`;

export const WAITING = 'Waiting. Say "go on" when ready.';
export const STOPPED = 'Stopped. Say "start" to go on.';
export const NO_INSTRUCTION = 'There is no instruction now.';

/** Said before what was understood. */
export const LEAD = {
  heard: 'Heard:',
  accepted: 'Well done:',
  kept: 'Kept as the last visit left it:',
  otherWay: 'Turned the other way:',
  otherScrew: 'The other adjuster:',
} as const;
export type Lead = (typeof LEAD)[keyof typeof LEAD];

/** "104, up 6." */
export const sentence = (parts: readonly string[]): string => `${parts.join(', ')}.`;
/** Of an order that was carried out as it was given: its words were just heard. */
export const DONE = 'Done.';
export const readBack = (lead: Lead, what: string): string => `${lead} ${what}.`;
/** `not`: what it replaces. */
export const corrected = (now: string, not?: string): string =>
  not === undefined ? `Corrected: ${now}.` : `Corrected: ${now}, not ${not}.`;
/** Of "104, up 6." only "Up 6." for the person who cannot see the meter; anything else is said whole. */
export const forTheLadder = (readback: string): string =>
  readback.replace(/^[−-]?[\d.]+, (?=(?:up|down) [\d.]+\.$)(.)/, (_, first: string) => first.toUpperCase());

export const takenBack = (what: string): string => `Taken back: ${what}.`;
export const noted = (remark: string): string => `Noted: ${remark}.`;
export const issueClosed = (how: string): string => `Issue closed: ${how}`;

export const LEFT_OUT = 'Left out. Nothing was taken down.';
export const NOT_TURNED = 'Not turned.';
export const WAITING = 'Waiting. Say "go on" when ready.';
export const STOPPED = 'Stopped. Say "start" to go on.';
export const NO_INSTRUCTION = 'There is no instruction now.';

/** Headings of the parts of a report. */
export const HEADINGS = {
  result: 'In short',
  periodic: 'Periodic visit',
  variations: 'Variations',
  pairs: 'Pairs',
  acrossSite: 'Seen across the site',
  siteLog: "The site's log",
  tests: 'Tests',
  handOver: 'Hand-over',
  photos: 'Photos',
  steps: 'Cause and effect',
  findings: 'Findings',
  issues: 'Issues and remarks',
  earlier: 'Earlier visits',
  signature: 'Signature',
  job: 'The job',
  record: 'The record',
  planned: 'As planned',
  entries: 'Entries named above',
  summary: 'Summary',
} as const;

export const pageNumberText = (page: number, total: number): string => `Page ${page} of ${total}`;
/** On the second sheet of a part and those after it. */
export const continuedText = (title: string): string => `${title} (continued)`;
export const TO_COVER = 'Back to the cover';
/** What a link in the text does, for who cannot see it: "#12". */
export const goToText = (text: string): string => `Go to ${text}`;

/** Of a signature that stands beside the first; `nth`: 2, 3 … */
export const signatureHeading = (nth: number): string => `${HEADINGS.signature} ${nth}`;

/** Headings of the parts of a report. */
export const HEADINGS = {
  thisReport: 'This report',
  pairs: 'Pairs',
  acrossSite: 'Seen across the site',
  siteLog: "The site's log",
  tests: 'Tests',
  findings: 'Findings',
  issues: 'Issues and remarks',
  earlier: 'Earlier visits',
  signature: 'Signature',
  job: 'The job',
  record: 'The record',
  planned: 'As planned',
} as const;

export const pageNumberText = (page: number, total: number): string => `Page ${page} of ${total}`;

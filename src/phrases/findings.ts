import type { Finding, FindingId, Severity, SiteFinding } from '../model/finding.ts';
import { NEEDS } from './missing.ts';
import { WHY_FAILED } from './proving.ts';

export const SEVERITY_WORDS: Record<Severity, string> = {
  serious: 'Serious',
  question: 'To be asked',
  note: 'To know',
};

/** Names of what a finding is about: tests and answers, adjusters and seats, or what was missing. */
const ABOUT: Readonly<Record<string, string>> = {
  ...NEEDS,
  ...WHY_FAILED,
  quiet: 'quiet test',
  alarm: 'alarm test',
  fault: 'fault test',
  'panel-indication': 'panel indication',
  wiring: 'wiring to the panel',
};

/** A value this version has no words for, from a newer log, stands as it is. */
const named = (about: readonly string[]): string => about.map((each) => ABOUT[each] ?? each).join(', ');

const minutes = (seconds: number | undefined): string => `${Math.round((seconds ?? 0) / 60)} min`;

const STATEMENTS: Record<FindingId, (finding: Finding) => string> = {
  'not-accepted': () => 'The record ends without an accepted alignment.',
  'touched-after-accept': () =>
    'An adjuster was turned after the alignment was accepted, and nothing was accepted again.',
  'gain-after-peak': () => 'The gain was changed after the last turn: no peak was checked at that gain.',
  'not-bracketed': ({ about }) =>
    `Accepted without a lower settled reading on each side of the peak: ${named(about)}.`,
  override: ({ about }) => `Accepted against missing evidence: ${named(about)}.`,
  'settle-time': () => 'A turn or gain change was made on a reading that had not come to rest.',
  drift: ({ figures }) =>
    figures.accepted === undefined || figures.later === undefined
      ? 'The last reading after the acceptance is not what was accepted.'
      : `The reading was accepted at ${figures.accepted} and is ${figures.later} since.`,
  unproven: ({ about }) => `Not passed under the alignment that stands: ${named(about)}.`,
  'test-failed': ({ about }) => `A test failed: ${named(about)}.`,
  'threshold-unknown': () =>
    'The plan has no alarm threshold: nobody knows whether the cover of the alarm test was the right one for it.',
  'open-issue': () => 'An issue is open.',
  'outputs-isolated': () => 'The record ends with the alarm outputs isolated.',
  'changed-since-signed': () => 'The record has changed since it was signed.',
  'long-gap': ({ figures }) => `Nobody of the crew said anything for ${minutes(figures.gap)}.`,
  'clock-back': ({ figures }) => `The clock went back by ${figures.back} s.`,
  corrections: ({ figures: { count } }) =>
    `Corrected or taken back: ${count === 1 ? 'once' : `${count} times`}.`,
  takeover: ({ about }) => `Another phone took over the ${named(about)} seat.`,
};

/** What a finding is called where its figures are not at hand. An id of a newer version stands as it is. */
const NAMES: Readonly<Record<string, string>> = {
  'not-accepted': 'no accepted alignment',
  'touched-after-accept': 'turned after the acceptance',
  'gain-after-peak': 'gain changed after the peak',
  'not-bracketed': 'peak not bracketed',
  override: 'accepted against missing evidence',
  'settle-time': 'settle time not kept',
  drift: 'reading drifted since the acceptance',
  unproven: 'a test not passed',
  'test-failed': 'a test failed',
  'threshold-unknown': 'alarm threshold not known',
  'open-issue': 'an issue open',
  'outputs-isolated': 'outputs isolated',
  'changed-since-signed': 'changed since signed',
  'long-gap': 'a long silence',
  'clock-back': 'the clock went back',
  corrections: 'corrections',
  takeover: 'a seat taken over',
} satisfies Record<FindingId, string>;

export const findingName = (id: string): string => NAMES[id] ?? id;

/** What a careful supervisor would ask, in one sentence. */
export const findingText = (finding: Finding): string => STATEMENTS[finding.id](finding);

export function siteFindingText({ id, pair, figures }: SiteFinding): string {
  switch (id) {
    case 'weak-neighbour':
      return `Pair ${pair} is ${figures.weaker?.toFixed(1)} dB weaker than others of its length (${figures.reading} against ${figures.equals}).`;
    case 'undone':
      return `Pair ${pair} was accepted, then touched on a later visit that accepted nothing.`;
  }
}

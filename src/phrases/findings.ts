import { BEAM_FALL_DB } from '../engine/fall.ts';
import type { AloneWay } from '../model/alone.ts';
import {
  type Finding,
  type FindingId,
  LONG_GAP_MS,
  type Severity,
  type SiteFinding,
  type SiteFindingId,
} from '../model/finding.ts';
import { METRES, type Units } from '../model/units.ts';
import { FIGURES, type PlanFigure } from '../plan/check.ts';
import type { Moment } from '../visit/verdict.ts';
import { ALONE_RECORD } from './alone.ts';
import { fixedBeside, placesBeside } from './beside-limits.ts';
import { LEFT_NAMES } from './hand-over.ts';
import { NEEDS } from './missing.ts';
import { planChangesText } from './plan-changes.ts';
import { warningText } from './plan-warnings.ts';
import { WHY_FAILED } from './proving.ts';
import { MOMENTS } from './proving-table.ts';
import type { Shown } from './units.ts';

/** Names of what a finding is about: tests, answers, adjusters, seats, or what was missing. */
const ABOUT: Readonly<Record<string, string>> = {
  ...NEEDS,
  ...WHY_FAILED,
  ...LEFT_NAMES,
  quiet: 'quiet test',
  alarm: 'alarm test',
  fault: 'fault test',
  'panel-indication': 'panel indication',
  wiring: 'wiring to the panel',
  'covers-on': 'covers are not on',
  'panel-normal': 'the panel is not normal',
};

/** A value from a newer log that has no words here is shown as its id. */
const named = (about: readonly string[]): string => about.map((each) => ABOUT[each] ?? each).join(', ');

/** Longer than the longest gap that is no finding, and shown so. */
const minutes = (seconds: number | undefined): string =>
  `${fixedBeside((seconds ?? 0) / 60, [LONG_GAP_MS / 60_000], 0)} min`;

const SINCE_SIGNED: Record<Severity, string> = {
  serious: 'The record has changed since it was signed: the pair may no longer be as it was proven.',
  question: 'The record has changed since it was signed.',
  note: 'Words or photos were added since it was signed. They change nothing that was proven.',
};

const STATEMENTS: Record<FindingId, (finding: Finding, shown: Shown) => string> = {
  'not-accepted': () => 'The record ends without an accepted alignment.',
  'touched-after-accept': () =>
    'An adjuster was turned after the acceptance. The new position was not accepted.',
  'gain-after-peak': () => 'The gain was changed after the last turn: no peak was checked at that gain.',
  'not-bracketed': ({ about }) =>
    `Accepted without a lower settled reading on each side of the peak: ${named(about)}.`,
  'adjuster-hindered': ({ about: [axis = '', later] }) =>
    `The ${axis} adjuster could not be turned${later === undefined ? '' : ', and was turned later'}.`,
  override: ({ about }) => `Accepted although evidence was missing: ${named(about)}.`,
  'settle-time': () => 'A turn or gain change was made before the reading had settled.',
  drift: ({ figures, about: [trend] }) =>
    trend !== undefined
      ? `After the acceptance the light was seen to change: ${trend}.`
      : figures.accepted === undefined || figures.later === undefined
        ? 'The last reading differs from the accepted one.'
        : `Accepted at ${figures.accepted}, but the last reading was ${figures.later}.`,
  'clear-path-dip': ({ figures: { accepted, later, fall } }) =>
    fall === undefined || accepted === undefined || later === undefined
      ? 'With the path clear, the light was lost between the acceptance and the end of the tests.'
      : `With the path clear, the reading fell to ${Number(later.toFixed(3))} between the acceptance (${accepted}) and the end of the tests: ${fixedBeside(fall, [BEAM_FALL_DB], 2)} dB.`,
  unproven: ({ about }) => `Not passed since the last acceptance: ${named(about)}.`,
  'test-failed': ({ about, figures: { passed } }) =>
    `A test failed: ${named(about)}.${passed === undefined ? '' : ` It passed later, #${passed}.`}`,
  'test-unread': ({ about }) =>
    `A test did not count, because nobody read the meter ${about.map((each) => MOMENTS[each as Moment] ?? each).join(', ')}.`,
  'like-lost-beam': ({ figures }) =>
    `The alarm was tested with a filter of ${figures.filter} %: so strong that it looks like a lost beam.`,
  'threshold-unknown': () =>
    'The plan has no alarm threshold: nobody knows whether the cover of the alarm test was the right one for it.',
  'plan-warning': (finding, shown) => {
    const figure = planFigureOf(finding);
    return `Planned outside a limit: ${figure ? warningText(figure, shown) : named(finding.about)}.`;
  },
  'open-issue': () => 'An issue is open.',
  'outputs-isolated': () => 'The record ends with the alarm outputs isolated.',
  'left-otherwise': ({ about }) =>
    `Left otherwise than planned: ${named(about)}. The tests were judged by the plan.`,
  'left-signal': ({ figures: { left, final } }) =>
    final === undefined
      ? `Written down as left at ${left}, but the meter showed no number last.`
      : `Written down as left at ${left}, but the last reading was ${final}.`,
  'step-failed': ({ about }) => `A step of cause and effect failed: ${about.join('; ')}.`,
  'step-not-done': ({ about }) => `Steps of cause and effect not done: ${about.join('; ')}.`,
  'restored-unready': ({ about }) => `The alarm outputs were restored, but: ${named(about)}.`,
  'told-nobody': () => 'Asked who was told that the alarm is out of service, the crew named nobody.',
  'changed-since-signed': ({ severity }) => SINCE_SIGNED[severity],
  'long-gap': ({ figures: { gap, said } }) =>
    said
      ? `For ${minutes(gap)} the crew only talked: nothing was read, turned or decided.`
      : `The crew said nothing for ${minutes(gap)}.`,
  'clock-back': ({ figures }) => `The clock went back by ${figures.back} s.`,
  corrections: ({ figures: { count } }) =>
    `Corrected or taken back: ${count === 1 ? 'once' : `${count} times`}.`,
  'photo-removed': ({ figures: { count } }) =>
    count === 1
      ? 'The picture of a photo was removed; its entry says why.'
      : `The pictures of ${count} photos were removed; their entries say why.`,
  takeover: ({ about: [seat = '', who] }) =>
    `Another phone took over the ${seat} seat${who === undefined ? '' : `, with ${who}`}.`,
  unnamed: ({ about }) => `Not named: who was at the ${about.join(' and at the ')}.`,
  'same-in-both': ({ about }) => `The same ${about.join(' and the same ')} was in both seats.`,
  'kept-by-phone': ({ figures: { count } }) =>
    `One phone alone kept the first ${count} entries of this log. No server saw them when they were made: whoever has that phone could have written them anew.`,
  alone: ({ about: [way = ''] }) =>
    `One person did this alone: ${ALONE_RECORD[way as AloneWay] ?? way}. Nobody else saw the meter or the ladder.`,
};

/** The name of a finding where its figures are not known. An id of a newer version is shown as it is. */
const NAMES: Readonly<Record<string, string>> = {
  'not-accepted': 'no accepted alignment',
  'touched-after-accept': 'turned after acceptance',
  'gain-after-peak': 'gain changed after the peak',
  'not-bracketed': 'peak not bracketed',
  'adjuster-hindered': 'an adjuster could not be turned',
  override: 'accepted with evidence missing',
  'settle-time': 'settle time not kept',
  drift: 'reading drifted since acceptance',
  'clear-path-dip': 'light lost and back since acceptance',
  unproven: 'a test not passed',
  'test-failed': 'a test failed',
  'test-unread': 'a test without its readings',
  'like-lost-beam': 'alarm tested with too strong a filter',
  'threshold-unknown': 'alarm threshold not known',
  'plan-warning': 'planned outside a limit',
  'open-issue': 'an issue open',
  'outputs-isolated': 'outputs isolated',
  'left-otherwise': 'left otherwise than planned',
  'left-signal': 'signal as left is not what was read',
  'step-failed': 'a step of cause and effect failed',
  'step-not-done': 'steps of cause and effect not done',
  'restored-unready': 'restored, but not ready',
  'told-nobody': 'nobody was told',
  'changed-since-signed': 'changed since signed',
  'long-gap': 'a long time without work',
  'clock-back': 'the clock went back',
  corrections: 'corrections',
  'photo-removed': 'a picture removed',
  takeover: 'a seat taken over',
  unnamed: 'somebody not named',
  'same-in-both': 'the same in both seats',
  alone: 'one person alone',
  'kept-by-phone': 'kept by one phone alone',
} satisfies Record<FindingId, string>;

const SITE_NAMES: Readonly<Record<string, string>> = {
  'weak-neighbour': 'weaker than its neighbours',
  'weaker-since': 'weaker than at the visit before',
  'signal-limit': 'signal beyond its limit',
  'signal-falling': 'signal falling toward its limit',
  undone: 'an acceptance undone later',
  'plan-changed': 'plan changed since the visit',
} satisfies Record<SiteFindingId, string>;

export const siteFindingName = (id: string): string => SITE_NAMES[id] ?? id;

export const findingName = (id: string): string => NAMES[id] ?? id;

/** What a careful supervisor would ask, in one sentence. `shown`: the units of the visit. */
export const findingText = (finding: Finding, shown: Shown = METRES): string =>
  STATEMENTS[finding.id](finding, shown);

/** The figure of the plan check that a finding was made of; undefined where a newer log has one without words here. */
function planFigureOf({
  about: [about, unit = '', by],
  figures: { value = 0, ...limits },
}: Finding): PlanFigure | undefined {
  const id = FIGURES.find((each) => each === about);
  return id && { id, value, unit, ...limits, ...(by !== undefined && { by }), warns: true };
}

/** Decibels; undefined where the settings are not known. */
function gainBetween(more: number | undefined): string {
  if (more === undefined) return 'The gains are not known: only the readings are compared.';
  if (more === 0) return 'The gain is the same.';
  return `Its gain is ${Math.abs(more).toFixed(1)} dB ${more > 0 ? 'higher' : 'lower'}.`;
}

function beyondText({ reading, least, lost, most }: SiteFinding['figures']): string {
  const under = reading === undefined ? [] : [`it shows ${reading}, and the least is ${least}`];
  if (lost === undefined || most === undefined) return under.join('; ');
  const places = placesBeside(lost, [most], 1);
  const over = `it lost ${lost.toFixed(places)} dB since the first visit, and the most is ${most} dB`;
  return [...under, over].join('; ');
}

function inDaysText(days: number): string {
  // 100 days that were reckoned as 99.9999999 are 100.
  const whole = Math.floor(days + 1e-6);
  if (whole < 1) return 'less than a day';
  return `about ${whole} ${whole === 1 ? 'day' : 'days'}`;
}

/** `units`: those of the site. */
export function siteFindingText({ id, pair, figures, plans }: SiteFinding, units: Units = METRES): string {
  switch (id) {
    case 'weak-neighbour':
      return `Pair ${pair} is ${figures.weaker?.toFixed(1)} dB weaker than others of its length (${figures.reading} against ${figures.equals}). ${gainBetween(figures.moreGain)}`;
    case 'weaker-since':
      return `Pair ${pair} is ${figures.weaker?.toFixed(1)} dB weaker than at the visit before (${figures.reading} against ${figures.before}). ${gainBetween(figures.moreGain)}`;
    case 'signal-limit':
      return `Pair ${pair} was left beyond a limit of its plan: ${beyondText(figures)}. Clean it, or align it anew.`;
    case 'signal-falling':
      return `The signal of pair ${pair} falls: over ${figures.visits} visits by ${figures.perYear?.toFixed(1)} dB a year. At this rate it reaches its limit in ${inDaysText(figures.days ?? 0)}, before the next visit.`;
    case 'undone':
      return `Pair ${pair} was accepted. A later visit changed it and accepted nothing.`;
    case 'plan-changed': {
      const changes = plans ? planChangesText(plans, units) : '';
      return figures.signed === 1
        ? `The plan of pair ${pair} was changed after it was signed: ${changes}. It must be proven anew.`
        : `The plan of pair ${pair} was changed after its visit began: ${changes}. The visit goes by the old plan. Begin a new visit.`;
    }
  }
}

import type { FindingId } from '../model/finding.ts';

/** Faults that can be planted in a simulated visit, and exactly the findings that a reviewer must then make. */
export const PLANTS = {
  misread: ['corrections'],
  takeover: ['takeover'],
  'long-gap': ['long-gap'],
  'clock-back': ['clock-back'],
  /** A turn made on a reading that was called too early. */
  hasty: ['settle-time'],
  /** An adjuster is stuck when it is first asked for, and is freed when the crew looks into it. */
  'stuck-screw': ['adjuster-hindered'],
  /** The light weakens by a third of a decibel after the acceptance. */
  drift: ['drift'],
  'late-alarm': ['test-failed'],
  /** The same, and answered for in writing instead of tested again. */
  excused: ['unproven', 'test-failed'],
  /** The same, and the crew leaves. */
  'walked-off': ['unproven', 'test-failed', 'open-issue', 'outputs-isolated'],
  /** An alarm behind a filter clearly below the threshold; set right, it stays quiet. */
  'too-sensitive': ['test-failed'],
  /** The same, and answered for in writing. */
  'too-sensitive-excused': ['unproven', 'test-failed'],
  /** An alarm, and a fault right after it, behind one cover. */
  'both-shown': ['test-failed'],
  /** With the path clear, two decibels are lost after the acceptance; somebody clears the way, and they are back. */
  'dip-before-test': ['clear-path-dip'],
  /** The mount slips after the acceptance; the crew finds nothing, and aligns again. */
  'mount-slips': ['clear-path-dip'],
  /** The beam is lost while the alarm test runs, and the cause found. */
  'beam-lost-in-test': ['test-failed'],
  /** The same behind a full cover, where neither the meter nor the panel shows it: only the reading after it does. */
  'beam-lost-in-fault-test': ['test-failed'],
  /** The crew uncovers without a reading behind the cover, and must test again. */
  'unread-behind': ['test-unread'],
  /** It covers before the meter was read with the path clear. */
  'unread-before': ['test-unread'],
  /** It goes from one test to the next without a reading between: neither counts. */
  'unread-after': ['test-unread'],
  /** The strong filter is taken for the weak one: the reading behind it tells. */
  'wrong-filter': ['test-failed'],
  /** Light reaches the receiver past the full cover. */
  'light-behind-cover': ['test-failed'],
  /** The crew owns one filter above the threshold, and it looks like a lost beam. */
  'filter-too-strong': ['like-lost-beam'],
  /** The plan says nothing of the threshold that is set. */
  'threshold-unknown': ['threshold-unknown'],
  /** The plan has one figure outside a limit: of the maker, of guidance, of a standard, or of common practice. */
  'path-too-long': ['plan-warning'],
  'too-far-apart': ['plan-warning'],
  'near-a-wall': ['plan-warning'],
  'high-ceiling': ['plan-warning'],
  'deep-below-ceiling': ['plan-warning'],
  'high-threshold': ['plan-warning'],
  /** Accepted with a reason before either peak was bracketed. */
  overridden: ['not-bracketed', 'override'],
  'left-unaccepted': ['not-accepted', 'outputs-isolated'],
  /** Written down as left with another figure than planned, or than the meter showed. */
  'left-threshold': ['left-otherwise'],
  'left-delay': ['left-otherwise'],
  'left-height': ['left-otherwise'],
  'left-signal': ['left-signal'],
  /** A step of cause and effect failed, was left out, or was never answered. */
  'step-failed': ['step-failed'],
  'step-left-out': ['step-not-done'],
  'step-unanswered': ['step-not-done'],
  'left-isolated': ['outputs-isolated'],
  /** The outputs are back in service, and the crew leaves the covers off, or the panel in fault. */
  'covers-off': ['restored-unready'],
  'panel-in-fault': ['restored-unready'],
  /** Written by an older program, which took any answer. */
  'told-nobody': ['told-nobody'],
  /** An hour in which the crew says "roger", and nothing else. */
  'hour-of-roger': ['long-gap'],
  /** The same at the end, before anybody signs; the crew leaves. */
  'roger-at-the-end': ['long-gap'],
  /** Only words come after the signature; then a reading; then a cover that stays on; then outputs isolated again. */
  'words-since': ['changed-since-signed'],
  /** A photo is added after the signature; or one that was signed with is removed, at the desk. */
  'photo-since': ['changed-since-signed'],
  'photo-removed-since': ['photo-removed', 'changed-since-signed'],
  /** The crew takes a photo, removes its picture, and takes another. */
  'photo-removed': ['photo-removed'],
  'read-since': ['changed-since-signed'],
  'covered-since': ['unproven', 'changed-since-signed'],
  'isolated-since': ['outputs-isolated', 'changed-since-signed'],
  /** Turned, or the gain changed, after the signature; the outputs had been restored. */
  'touched-since': ['touched-after-accept', 'changed-since-signed'],
  'gain-since': ['gain-after-peak', 'changed-since-signed'],
  /** The ladder phone joins and says no name; so does the phone that takes its seat over; or the panel is handed on. */
  unnamed: ['unnamed'],
  'takeover-unnamed': ['takeover', 'unnamed'],
  'handed-on-unnamed': ['unnamed'],
  /** One person, or one phone, in both seats. */
  'same-person': ['same-in-both'],
  'same-phone': ['same-in-both'],
  /** The one at the panel climbs, and takes the ladder's seat over. */
  'panel-climbs': ['takeover', 'same-in-both'],
  /** One person, with a second phone that watches the meter. */
  alone: ['alone'],
  /** Turned after a second signature had been set beside the first. */
  'touched-since-both': ['touched-after-accept', 'changed-since-signed'],
} as const satisfies Record<string, readonly FindingId[]>;
export type Plant = keyof typeof PLANTS;

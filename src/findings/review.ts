import type { Finding, FindingId } from '../model/finding.ts';
import type { Visit } from '../visit/visit.ts';
import { adjusterHindered } from './adjuster-hindered.ts';
import { alone } from './alone.ts';
import { changedSinceSigned } from './changed-since-signed.ts';
import { clearPathDip } from './clear-path-dip.ts';
import { clockBack } from './clock-back.ts';
import { corrections } from './corrections.ts';
import { drift } from './drift.ts';
import { gainAfterPeak } from './gain-after-peak.ts';
import { keptByPhone } from './kept-by-phone.ts';
import { leftOtherwise } from './left-otherwise.ts';
import { leftSignal } from './left-signal.ts';
import { likeLostBeam } from './like-lost-beam.ts';
import { longGap } from './long-gap.ts';
import type { Look } from './look.ts';
import { notAccepted } from './not-accepted.ts';
import { notBracketed } from './not-bracketed.ts';
import { openIssue } from './open-issue.ts';
import { outputsIsolated } from './outputs-isolated.ts';
import { override } from './override.ts';
import { photoRemoved } from './photo-removed.ts';
import { planWarning } from './plan-warning.ts';
import { restoredUnready } from './restored-unready.ts';
import { sameInBoth } from './same-in-both.ts';
import { settleTime } from './settle-time.ts';
import { stepFailed, stepNotDone } from './steps.ts';
import { takeover } from './takeover.ts';
import { testFailed } from './test-failed.ts';
import { testUnread } from './test-unread.ts';
import { thresholdUnknown } from './threshold-unknown.ts';
import { toldNobody } from './told-nobody.ts';
import { touchedAfterAccept } from './touched-after-accept.ts';
import { unnamed } from './unnamed.ts';
import { unproven } from './unproven.ts';

/** What is looked for, in the order of the list of findings. */
const LOOKS: Record<FindingId, Look> = {
  'not-accepted': notAccepted,
  'touched-after-accept': touchedAfterAccept,
  'gain-after-peak': gainAfterPeak,
  'not-bracketed': notBracketed,
  'adjuster-hindered': adjusterHindered,
  override,
  'settle-time': settleTime,
  drift,
  'clear-path-dip': clearPathDip,
  unproven,
  'test-failed': testFailed,
  'test-unread': testUnread,
  'threshold-unknown': thresholdUnknown,
  'plan-warning': planWarning,
  'like-lost-beam': likeLostBeam,
  'open-issue': openIssue,
  'outputs-isolated': outputsIsolated,
  'left-otherwise': leftOtherwise,
  'left-signal': leftSignal,
  'step-failed': stepFailed,
  'step-not-done': stepNotDone,
  'restored-unready': restoredUnready,
  'told-nobody': toldNobody,
  'changed-since-signed': changedSinceSigned,
  'long-gap': longGap,
  'clock-back': clockBack,
  corrections,
  'photo-removed': photoRemoved,
  takeover,
  unnamed,
  'same-in-both': sameInBoth,
  alone,
  'kept-by-phone': keptByPhone,
};

/** Reads a visit as a careful supervisor would. The same log gives the same findings, always. */
export const reviewVisit = (visit: Visit): Finding[] => Object.values(LOOKS).flatMap((look) => look(visit));

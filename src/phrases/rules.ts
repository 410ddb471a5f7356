import type { RuleId } from '../engine/rules.ts';
import type { CommissionRuleId } from '../visit/rules.ts';

/** The rules of the procedure in one sentence each, in the order the engine looks at them. */
export const RULE_WORDS: Record<RuleId, string> = {
  finished: 'Once the alignment is accepted, nothing more is turned.',
  'free-path':
    'Nothing is judged while the path is covered: uncover it, unless it is covered for the blocking check.',
  settle:
    'After the hands are off, wait until the reading has settled, or two readings agree; only then judge.',
  read: 'Every turn and every gain change is judged by a reading taken after it.',
  wandering: 'A reading that will not stand still is no evidence: look for what moves before going on.',
  'doubt-reading': 'A reading that the earlier ones say cannot be is read again before it counts.',
  'doubt-turn':
    'Where the reading stands, the turn before it is asked about: the wrong way, the wrong adjuster, half or double.',
  'read-twice':
    'A low reading that nothing before it foretells may come to prove a side of the peak, so it is read twice.',
  'not-by-reflection':
    'If the reading stays when the direct path is blocked, the light arrives by a reflection: aim again.',
  'full-gain-to-find': 'With no signal, search at full gain.',
  're-aim': 'With no signal at full gain, bring the emitter by eye to within 15 cm of the receiver.',
  'widening-square':
    'With no signal after aiming, turn the two adjusters through a widening square and remember each place.',
  'nothing-there': 'When the square has found nothing, work through the causes, most likely first.',
  'recover-signal': 'When a turn loses the signal, go back to where it was seen.',
  'lower-gain':
    'When the meter is flooded, lower the gain and go on with the same adjuster in the same direction.',
  'own-gain': 'A detector that sets its own gain is given time to do so, and read again.',
  'begin-again':
    'A search that goes on and on without proof rests on a slip that nobody noticed: aim again, and begin again.',
  'find-slope': 'Turn one adjuster a known amount to learn which way the signal rises.',
  climb: 'Keep turning the way the signal rises.',
  'pass-the-peak': 'Go past the peak until the reading falls, so that it is bracketed from both sides.',
  'reverse-on-fall': 'A fall means the peak lies the other way: turn back through it.',
  'peak-adjuster': 'With the peak bracketed, turn straight to where the readings place it.',
  'second-peak':
    'Light where this beam cannot be comes from a second peak: look at it, and keep to the higher one.',
  'beyond-aim':
    'A peak far from where the eye aimed may be a side lobe: look as far to the other side of the aim.',
  'mid-band': 'Set the gain so that the peak reads in the middle of the band.',
  'prove-peak': 'Both peaks are checked at the final gain: a lower settled reading on each side.',
  'brighter-before':
    'Where brighter light than this peak was read and is gone, the screws have slipped from their count: aim again.',
  'return-to-peak': 'After checking a side, turn back to the peak, from the side the search came from.',
  'too-weak': 'A peak that stays below the band at full gain is not accepted: find out why it is weak.',
  'too-strong': 'A peak that floods the meter at the lowest gain is not accepted: find out why it is strong.',
  'blocking-check':
    'Before acceptance the direct path is blocked: the reading must go to nothing and come back the same.',
  'hold-steady': 'The final reading must stay within tolerance for the hold time.',
  'offer-accept': 'With all the evidence there, the crew accepts.',
};

/** The rules before and after the alignment. */
export const COMMISSION_RULE_WORDS: Record<CommissionRuleId, string> = {
  before: 'Nobody climbs, and nothing is tested, before the list is answered.',
  'panel-normal-first': 'A test starts from a panel at normal: only then what it shows is the answer.',
  'prove-alarm':
    'Part of the light held back, slowly, must bring an alarm after the set delay and no sooner.',
  'prove-fault': 'All of the light held back at once must bring a fault after the set delay.',
  restore: 'Uncovered and reset, the panel must come back to normal.',
  indication: 'The panel must show this pair, in its zone, and no other.',
  wiring: 'A broken wire between detector and panel must show as a fault.',
  'come-back': 'After the tests the reading must be what it was when the alignment was accepted.',
  'failed-test': 'A test that failed is put right and made again, or somebody answers for it in writing.',
  after: 'Nobody leaves before the protection is back.',
  'offer-sign': 'With everything proven and back in service, the record can be signed.',
  signed: 'Once the record is signed, nothing more is touched.',
};

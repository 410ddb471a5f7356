import type { RuleId } from '../engine/rules.ts';
import { METRES } from '../model/units.ts';
import { PRE_AIM_M } from '../plan/geometry.ts';
import type { CommissionRuleId } from '../visit/rules.ts';
import { nearText } from './near.ts';

/** How near an aim by eye must come, in metres; where a site reads feet, they are put in its place. */
export const NEAR = nearText(PRE_AIM_M, METRES);

/** The rules of the procedure in one sentence each, in the order the engine checks them. */
export const RULE_WORDS: Record<RuleId, string> = {
  finished: 'Once the alignment is accepted, nothing more is turned.',
  'free-path':
    'Nothing is judged while the path is covered: uncover it, unless it is covered for the blocking check.',
  settle: 'After hands off, wait until the reading has settled or two readings agree; only then judge.',
  read: 'Every turn and every gain change is judged by a reading taken after it.',
  wandering: 'A reading that keeps changing is no evidence: find what moves first.',
  'aim-first': `Read what is there; then, before anything is turned, aim at the receiver by eye, within ${NEAR}, or by the laser if there is one: light by way of a wall looks like the beam.`,
  'doubt-reading': 'A reading that does not fit the earlier ones is read again before it counts.',
  'doubt-turn':
    'If the reading is confirmed, the crew is asked about the turn before it: wrong way, wrong adjuster, half or double. Where light does not come back, about each turn since.',
  'read-twice':
    'A low reading that nothing before it predicts may later prove a side of the peak, so it is read twice; in a plain search every reading is.',
  'not-by-reflection':
    'If the reading stays when the direct path is blocked, the light comes from a reflection: aim again.',
  'light-stays':
    'If light stays behind the card after two more aims by eye, aiming is not the cure: find where it comes from.',
  'full-gain-to-find': 'With no signal, search at full gain.',
  're-aim': `With no signal at full gain, bring the emitter by eye to within ${NEAR} of the receiver.`,
  'widening-square':
    'With no signal after aiming, turn the two adjusters through a widening square and remember each place.',
  'nothing-there': 'When the square has found nothing, work through the causes, most likely first.',
  'recover-signal': 'When a turn loses the signal, go back to where it was seen.',
  'lower-gain':
    'When the meter is saturated, lower the gain and continue with the same adjuster in the same direction.',
  'own-gain': 'A detector that sets its own gain gets time to do so, and is read again.',
  'no-single-peak':
    'A search that finds no end is stopped: turns are miscounted, or something moves or stands in the light. Find it first.',
  'begin-again':
    'A search that goes on too long without proof, or whose confirmed readings fit no beam, begins again with an aim by eye.',
  'plain-search':
    'Where the readings fit no beam, go one adjuster at a time, reach every place next to the peak clockwise, and stop between two lower readings.',
  'light-around':
    'A narrow light found so may be a side lobe: the places around it where the beam can be are read, and anything brighter is taken up.',
  look: 'Where no number is read, every turn is judged by whether the light rose, fell or stayed.',
  'middle-of-equals':
    'Where no number is read, the peak is the middle between two places from which the light falls alike.',
  'find-slope': 'Turn one adjuster a known amount to learn which way the signal rises.',
  climb: 'Keep turning the way the signal rises.',
  'pass-the-peak': 'Go past the peak until the reading falls, so that it is bracketed from both sides.',
  'reverse-on-fall': 'A fall means the peak lies the other way: turn back through it.',
  'peak-adjuster': 'With the peak bracketed, turn straight to where the readings place it.',
  'second-peak':
    'Light where this beam cannot be comes from a second peak: measure it, and keep the higher one.',
  'beyond-aim':
    'A peak far from the aim by eye may be a side lobe: look just as far on the other side of the aim.',
  'mid-band': 'Set the gain so that the peak reads in the middle of the band.',
  'set-own-gain':
    "A detector that sets its own gain is told to set it at the peak, as its maker's instructions say.",
  'gain-too-coarse':
    'One gain step puts the peak below the band and the next one above it: the gain is not changed any more.',
  'prove-peak': 'Both peaks are checked at the final gain: a lower settled reading on each side.',
  'brighter-before':
    'If light brighter than this peak was read and is gone, the screws are not where the count says: aim again.',
  'return-to-peak': 'After checking a side, turn back to the peak, from the side the search came from.',
  'too-weak': 'A peak that stays below the band at full gain is not accepted: find out why it is weak.',
  'too-strong':
    'A peak that saturates the meter at the lowest gain is not accepted: find out why it is strong.',
  'stuck-adjuster':
    'With an adjuster stuck, the other one is worked on first; then it must be freed, or the work stops with a note.',
  'end-of-travel':
    'With the peak beyond the end of an adjuster, the screws go back to their middle and the unit is aimed again.',
  'blocking-check':
    'Before acceptance the direct path is blocked: the reading must go to nothing and come back the same.',
  'hold-steady': 'The final reading must stay within tolerance for the hold time.',
  'offer-accept': 'When all the evidence is there, the crew accepts.',
};

/** The rules before and after the alignment. */
export const COMMISSION_RULE_WORDS: Record<CommissionRuleId, string> = {
  before: 'Nobody climbs, and nothing is tested, before the list is answered.',
  'as-found': 'A periodic visit begins with the signal as it is found, before anything is touched.',
  clean: 'Dirt takes light away: the windows are cleaned, or the crew says that they were not.',
  'after-cleaning': 'After cleaning the meter is read again: what came back was dirt.',
  'signal-fell':
    'Where the signal is less than the last visit left, the cause is looked for; if it stays low, the beam is aligned again.',
  'keep-steady': 'The signal that is kept must stay within tolerance for the hold time.',
  keep: 'Untouched and as bright as the last visit left it, the alignment is kept; the tests follow.',
  'panel-normal-first': 'A test starts with the panel at normal: only then does what it shows count.',
  'clear-before':
    'Before every cover the meter is read with the path clear: what the cover holds back is counted from there.',
  'clear-after': 'After every cover the meter is read with the path clear: is the beam still what it was?',
  'beam-moved':
    'If the reading with the path clear has fallen, the beam was lost or moved: find the cause; if it stays low, align again.',
  'prove-quiet': 'A loss clearly below the alarm threshold must not give an alarm.',
  'prove-alarm': 'Slowly blocking part of the light must give an alarm after the set delay, and no sooner.',
  'prove-fault': 'Blocking all of the light at once must give a fault after the set delay.',
  'like-lost-beam':
    'A filter this strong may look like a lost beam, and bring a fault: it is used only if there is no weaker one.',
  'read-behind': 'Where the meter can tell, a test counts only with a reading behind the cover.',
  'not-read': 'Without a reading before the cover, behind it and after it, the test does not count.',
  'not-decisive':
    'The last cover was too near the alarm threshold, or nobody knows which it was: that test does not count.',
  'stronger-filter': 'Only a cover clearly above the alarm threshold proves the alarm.',
  restore: 'Uncovered and reset, the panel must come back to normal.',
  indication: 'The panel must show this pair, in its zone, and no other.',
  wiring: 'A broken wire between detector and panel must show as a fault.',
  'come-back': 'After the tests the reading must be what it was when the alignment was accepted.',
  'failed-test':
    'After a failed test, the cause is fixed and the test is repeated, or somebody answers for it in writing.',
  after: 'Nobody leaves before the protection is back.',
  'offer-sign': 'With everything proven and back in service, the record can be signed.',
  signed: 'Once the record is signed, nothing more is touched.',
};

/**
 * The rules of the procedure, by the id every advice carries, in the order the engine looks at them: the
 * first that applies speaks. One sentence each.
 */
export const RULES = {
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
} as const;

export type RuleId = keyof typeof RULES;

/** What to look at when something cannot be right; phrased in `src/phrases/`, most likely first. */
export const CAUSES = {
  nothing: [
    'power-off',
    'path-obstructed',
    'receiver-facing-away',
    'wrong-pair',
    'beyond-range',
    'faulty-unit',
  ],
  wandering: ['loose-mount', 'moving-building', 'sun-on-receiver', 'traffic-in-beam', 'steam-or-dust'],
  weak: ['receiver-facing-away', 'dirty-optics', 'beyond-range', 'path-partly-obstructed', 'reflected-light'],
  strong: ['below-range', 'attenuator-missing', 'stray-light'],
} as const;
export type Cause = (typeof CAUSES)[keyof typeof CAUSES][number];

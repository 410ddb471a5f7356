import { EIGHTHS_PER_TURN } from '../model/turns.ts';
import { means, type Rules, said, say } from './rule.ts';

/** The largest single turn that is believed, in whole turns; nobody turns further without looking. */
const MAX_TURNS = 4;

/** A turn typed in figures, in whole turns. */
export const inEighths = (turns: number): number | undefined => {
  const eighths = turns * EIGHTHS_PER_TURN;
  return Number.isInteger(eighths) && eighths > 0 && turns <= MAX_TURNS ? eighths : undefined;
};

/** Turns of an adjuster: which one, how far, which way. */
export const turningRules = {
  axis: [
    ...means('horizontal' as const, '(horizontal|pan|side to side) [one|screw|adjuster|knob|axis]'),
    ...means('vertical' as const, '(vertical|tilt) [one|screw|adjuster|knob|axis]'),
  ],
  at: [say('[on|of|with] [the] <axis>', ({ axis }) => axis)],
  round: [
    ...means('clockwise' as const, 'clockwise'),
    ...means('anticlockwise' as const, 'anticlockwise|counterclockwise'),
  ],
  sense: [
    say('<round>', ({ round }) => round),
    ...means('back' as const, 'back|backwards|back off|back the other way|[the] other way|in reverse'),
    ...means(
      'on' as const,
      'further|further on|forward|forwards|onward|more|[the] same way|in the same direction',
    ),
  ],
  way: [
    say('<sense>', ({ sense }) => sense),
    ...means('left' as const, '[to the] left|leftwards'),
    ...means('right' as const, '[to the] right|rightwards'),
    ...means('up' as const, 'up|upwards'),
    ...means('down' as const, 'down|downwards'),
    ...means('in' as const, 'in'),
    ...means('out' as const, 'out'),
  ],

  part: [
    ...means(1, '[a|an|one] eighth'),
    ...means(2, '[a|one] quarter|two eighths'),
    ...means(3, 'three eighths'),
    ...means(4, '[a|one] half|two (quarter|quarters)|four eighths'),
    ...means(5, 'five eighths'),
    ...means(6, 'three (quarters|quarter)|six eighths'),
    ...means(7, 'seven eighths'),
  ],
  turns: [
    say('<part> [of] [a] (turn|turns)', ({ part }) => part),
    ...means(8, '(a|one) [full|whole|complete] turn|(full|whole|complete) turn'),
    say('[a|one] turn and <part>', ({ part }) => 8 + part),
    say('one and <part> (turn|turns)', ({ part }) => 8 + part),
    ...means(16, 'two [full|whole|complete] turns'),
    say('two turns and <part>', ({ part }) => 16 + part),
    say('two and <part> turns', ({ part }) => 16 + part),
    ...means(24, 'three [full|whole|complete] turns'),
    say('<numeral> (turn|turns)', ({ numeral }) => inEighths(numeral)),
    say('<fraction> [of] [a] [turn|turns]', ({ fraction }) => inEighths(fraction)),
  ],
  /** How far, also where the word "turn" is left out. */
  size: [
    say('<turns>', ({ turns }) => ({ eighths: turns })),
    say('<part>', ({ part }) => ({ eighths: part })),
    say('another <part> [turn]', ({ part }) => ({ eighths: part, way: 'on' as const })),
    ...means({}, 'a [little] (bit|touch|nudge|tad)|a little|slightly'),
  ],
  turned: [
    say('<size> <way?> <at?>', ({ size, way, at }) => said({ ...size, way: way ?? size.way, axis: at })),
    say('<size> <at> <way>', ({ size, at, way }) => ({ ...size, axis: at, way })),
    say('on <size> <at?>', ({ size, at }) => said({ ...size, axis: at, way: 'on' as const })),
    say('<size> <at?> on', ({ size, at }) => said({ ...size, axis: at, way: 'on' as const })),
    say('<at> <size> <way?>', ({ at, size, way }) => said({ ...size, axis: at, way: way ?? size.way })),
    say('<at> <size> on', ({ at, size }) => ({ ...size, axis: at, way: 'on' as const })),
    say('<at> <way> <size?>', ({ at, way, size }) => ({ ...size, axis: at, way })),
    say('<way> <size> <at?>', ({ way, size, at }) => said({ ...size, axis: at, way })),
    say('<way> <at> <size?>', ({ way, at, size }) => ({ ...size, axis: at, way })),
    // The turn that was made comes first, the one that was asked for after it.
    say('<size> <way?> (instead of|rather than|for) <asked:size>', ({ size, way }) =>
      said({ ...size, way: way ?? size.way }),
    ),
  ],
  toVerb: means(
    true as const,
    "[i|i've|we|we've] [just|only] (turned|moved|rotated|did|done|made|wound|screwed|gave|given|nudged|tweaked) [it]",
    'only',
  ),
  moved: [
    say('<toVerb?> <turned>', ({ turned }) => ({ kind: 'moved' as const, ...turned })),
    // The answer to "which way?", or all that is said of the turn that was asked for.
    say('<round>', ({ round }) => ({ kind: 'moved' as const, way: round })),
    say('<toVerb> <way>', ({ way }) => ({ kind: 'moved' as const, way })),
    // "Gone up" alone is said of the reading.
    say("[i|i've] (went|gone|come|came) <turned>", ({ turned }) => ({ kind: 'moved' as const, ...turned })),
    say("[i|i've] (went|gone) <sense>", ({ sense }) => ({ kind: 'moved' as const, way: sense })),
    say("[i|i've] backed off <size> <at?>", ({ size, at }) =>
      said({ kind: 'moved' as const, ...size, way: 'back' as const, axis: at }),
    ),
    say('<toVerb> <at>', ({ at }) => ({ kind: 'moved' as const, axis: at })),
  ],
} satisfies Rules;

import { doubt, type Either, either, means, type Rules, say } from './rule.ts';

/**
 * Numbers as they are spoken: everyday English, the radiotelephony words of ICAO Annex 10 Volume II and the
 * code words of ITU Radio Regulations Appendix 14 (both from memory).
 */

const UNITS = [
  'one|unaone',
  'two|bissotwo',
  'three|tree|terrathree',
  'four|fower|kartefour',
  'five|fife|pantafive',
  'six|soxisix',
  'seven|setteseven',
  'eight|oktoeight',
  'nine|niner|novenine',
];
const TEENS = 'ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ');
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');

const shows = (value: number, meter: { min: number; max: number } | undefined): boolean =>
  meter !== undefined && value >= meter.min && value <= meter.max;

/** Two numbers side by side: one number said in two halves, or one that corrects the other. */
const halves = (high: number, low: number): Either<number> => either(high * 100 + low, high, low);

export const numberRules = {
  zero: means('0', 'zero|nought|naught|nil|nadazero'),
  unit: UNITS.flatMap((words, i) => means(String(i + 1), words)),
  head: [say('<zero>', ({ zero }) => zero), say('<unit>', ({ unit }) => unit)],
  digit: [say('<head>', ({ head }) => head), ...means('0', 'oh')],

  upToTwo: [say('<a:digit> <b:digit?>', ({ a, b = '' }) => a + b)],
  upToThree: [say('<digit> <upToTwo?>', ({ digit, upToTwo = '' }) => digit + upToTwo)],
  upToFive: [
    say('<digit>', ({ digit }) => digit),
    say('<a:digit> <b:digit> <upToThree?>', ({ a, b, upToThree = '' }) => a + b + upToThree),
  ],

  // Figure by figure, up to six of them: "one four two", "one double four", "oh seven". It does not begin
  // with "oh" unless a figure other than nought follows, for "oh" and "oh oh" alone are exclamations.
  run: [
    say('<head> <upToFive?>', ({ head, upToFive = '' }) => head + upToFive),
    say('oh <unit> <upToTwo?>', ({ unit, upToTwo = '' }) => unit + upToTwo),
    say('(oh|double) oh <unit>', ({ unit }) => unit),
    say('double <head> <upToTwo?>', ({ head, upToTwo = '' }) => head + head + upToTwo),
    say('double <head> double <a:digit>', ({ head, a }) => head + head + a + a),
    say('<head> double <a:digit> <b:digit?>', ({ head, a, b = '' }) => head + a + a + b),
    say('<head> <a:digit> double <b:digit>', ({ head, a, b }) => head + a + b + b),
    say('(triple|treble) <head> <a:digit?>', ({ head, a = '' }) => head.repeat(3) + a),
    say('<head> (triple|treble) <a:digit>', ({ head, a }) => head + a.repeat(3)),
  ],

  teen: TEENS.flatMap((word, i) => means(10 + i, word)),
  tens: TENS.flatMap((word, i) => means(20 + 10 * i, word)),
  two: [
    say('<teen>', ({ teen }) => teen),
    say('<tens>', ({ tens }) => tens),
    say('<tens> <unit>', ({ tens, unit }) => tens + Number(unit)),
  ],
  small: [say('<unit>', ({ unit }) => Number(unit)), say('<two>', ({ two }) => two)],
  rest: [say('[and] <small>', ({ small }) => small), say('oh <unit>', ({ unit }) => Number(unit))],
  century: [
    say('[a] hundred <rest?>', ({ rest = 0 }) => 100 + rest),
    say('<unit> hundred <rest?>', ({ unit, rest = 0 }) => 100 * Number(unit) + rest),
  ],

  whole: [
    say('<run>', ({ run }) => Number(run)),
    say('<two>', ({ two }) => two),
    say('oh <two>', ({ two }) => two),
    say('<unit> <two>', ({ unit, two }) => 100 * Number(unit) + two),
    say('<century>', ({ century }) => century),
    say('<teen> hundred <rest?>', ({ teen, rest = 0 }) => 100 * teen + rest),
    say('[a] (thousand|tousand) <rest?>', ({ rest = 0 }) => 1000 + rest),
    say('[a] (thousand|tousand) [and] <century>', ({ century }) => 1000 + century),
    say('<unit> (thousand|tousand) <rest?>', ({ unit, rest = 0 }) => 1000 * Number(unit) + rest),
    say('<unit> (thousand|tousand) [and] <century>', ({ unit, century }) => 1000 * Number(unit) + century),
  ],
  decimals: [
    say('<digit> <upToThree?>', ({ digit, upToThree = '' }) => digit + upToThree),
    say('double <digit>', ({ digit }) => digit + digit),
    say('(triple|treble) <digit>', ({ digit }) => digit.repeat(3)),
    say('<two>', ({ two }) => String(two)),
  ],

  number: [
    say('<whole>', ({ whole }) => whole),
    say('<whole> (point|decimal|dot) <decimals>', ({ whole, decimals }) => Number(`${whole}.${decimals}`)),
    say('[oh] (point|decimal|dot) <decimals>', ({ decimals }) => Number(`0.${decimals}`)),
    say('minus <whole>', ({ whole }) => 0 - whole),
    say(
      'minus <whole> (point|decimal|dot) <decimals>',
      ({ whole, decimals }) => 0 - Number(`${whole}.${decimals}`),
    ),
    say('minus [oh] (point|decimal|dot) <decimals>', ({ decimals }) => 0 - Number(`0.${decimals}`)),
    // "One and a half" by itself may be a turn: see the doubtful sentences.
    say('<two> and a half', ({ two }) => two + 0.5),
    say('<century> and a half', ({ century }) => century + 0.5),
    say('<unit> <two> and a half', ({ unit, two }) => 100 * Number(unit) + two + 0.5),
    say('<numeral>', ({ numeral }) => numeral),
    say('minus <numeral>', ({ numeral }) => (numeral >= 0 ? 0 - numeral : undefined)),
  ],

  // Words that can be two numbers.
  doubtful: [
    // "Nineteen forty two" is a number of four figures only where the meter has four.
    doubt('<teen> <two>', ({ teen, two }, { meter }) =>
      shows(100 * teen + two, meter) ? 100 * teen + two : halves(teen, two),
    ),
    doubt('<teen> oh <unit>', ({ teen, unit }, { meter }) =>
      !meter || shows(100 * teen + Number(unit), meter)
        ? 100 * teen + Number(unit)
        : halves(teen, Number(unit)),
    ),
    doubt('<tens> oh <unit>', ({ tens, unit }, { meter }) =>
      shows(100 * tens + Number(unit), meter) ? 100 * tens + Number(unit) : halves(tens, Number(unit)),
    ),
    doubt('<tens> <teen>', ({ tens, teen }) => halves(tens, teen)),
    doubt('<a:tens> <b:tens>', ({ a, b }) => halves(a, b)),
    doubt('<a:tens> <b:tens> <unit>', ({ a, b, unit }) => halves(a, b + Number(unit))),
    // "Twenty one forty": 2140, or 21 then 40, or 20 then 140.
    doubt('<tens> <unit> <two>', ({ tens, unit, two }) =>
      either(100 * (tens + Number(unit)) + two, tens + Number(unit), two, tens, 100 * Number(unit) + two),
    ),
    doubt('<tens> <a:unit> oh <b:unit>', ({ tens, a, b }) =>
      either(100 * (tens + Number(a)) + Number(b), tens + Number(a), tens, 100 * Number(a) + Number(b)),
    ),
    doubt('<tens> <unit> hundred <rest?>', ({ tens, unit, rest = 0 }) =>
      either(100 * (tens + Number(unit)) + rest, tens, 100 * Number(unit) + rest),
    ),
  ],
  figure: [say('<number>', ({ number }) => number), say('<doubtful>', ({ doubtful }) => doubtful)],
} satisfies Rules;

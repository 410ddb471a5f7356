import type { Intent } from '../grammar/intent.ts';
import { measureOf } from '../grammar/measures.ts';
import { doubtfulJoin, either, join, type Rules, said, say } from '../grammar/rule.ts';
import { valueReading } from '../model/reading.ts';

const then = (...parts: (Intent | readonly Intent[])[]): Intent[] => parts.flat();
const reading = (value: number): Intent => ({ kind: 'reading', reading: valueReading(value) });

/**
 * How words make sentences in the languages beside English: the same in all of them, so that a language's folder holds
 * words only. It gives these rules: of numbers `zero`, `unit`, `two`, `hundreds`, `thousands`, `minus`, `point` and
 * `andHalf`; the small words `and`, `to` and `not`; and what the crew means, from `axis` to `slip`.
 */
export const FRAME = {
  head: [say('<zero>', ({ zero }) => zero), say('<unit>', ({ unit }) => unit)],
  digit: [say('<head>', ({ head }) => head)],
  upToTwo: [say('<a:digit> <b:digit?>', ({ a, b = '' }) => a + b)],
  upToThree: [say('<digit> <upToTwo?>', ({ digit, upToTwo = '' }) => digit + upToTwo)],
  upToFive: [
    say('<digit>', ({ digit }) => digit),
    say('<a:digit> <b:digit> <upToThree?>', ({ a, b, upToThree = '' }) => a + b + upToThree),
  ],
  run: [say('<head> <upToFive?>', ({ head, upToFive = '' }) => head + upToFive)],
  small: [say('<unit>', ({ unit }) => Number(unit)), say('<two>', ({ two }) => two)],
  rest: [say('<small>', ({ small }) => small), say('<and> <small>', ({ small }) => small)],
  century: [say('<hundreds> <rest?>', ({ hundreds, rest = 0 }) => hundreds + rest)],
  whole: [
    say('<run>', ({ run }) => Number(run)),
    say('<two>', ({ two }) => two),
    say('<century>', ({ century }) => century),
    say('<thousands>', ({ thousands }) => thousands),
    say('<thousands> <rest>', ({ thousands, rest }) => thousands + rest),
    say('<thousands> <century>', ({ thousands, century }) => thousands + century),
  ],
  decimals: [
    say('<digit> <upToThree?>', ({ digit, upToThree = '' }) => digit + upToThree),
    say('<two>', ({ two }) => String(two)),
  ],
  number: [
    say('<whole>', ({ whole }) => whole),
    say('<whole> <point> <decimals>', ({ whole, decimals }) => Number(`${whole}.${decimals}`)),
    say('<minus> <whole>', ({ whole }) => 0 - whole),
    say('<minus> <whole> <point> <decimals>', ({ whole, decimals }) => 0 - Number(`${whole}.${decimals}`)),
    // "One and a half" by itself may be a turn.
    say('<two> <andHalf>', ({ two }) => two + 0.5),
    say('<century> <andHalf>', ({ century }) => century + 0.5),
    say('<numeral>', ({ numeral }) => numeral),
    say('<minus> <numeral>', ({ numeral }) => (numeral >= 0 ? 0 - numeral : undefined)),
  ],
  figure: [say('<number>', ({ number }) => number)],
  quantity: [
    say('<figure> <measure?>', ({ figure, measure }, { meter }) =>
      measure === undefined || measure === 'own' || !meter || measure === measureOf(meter.unit)
        ? figure
        : undefined,
    ),
  ],

  at: [say('<axis>', ({ axis }) => axis)],
  way: [say('<sense>', ({ sense }) => sense)],
  size: [
    say('<turns>', ({ turns }) => ({ eighths: turns })),
    say('<part>', ({ part }) => ({ eighths: part })),
  ],
  turned: [
    say('<size> <way?> <at?>', ({ size, way, at }) => said({ ...size, way: way ?? size.way, axis: at })),
    say('<size> <at> <way>', ({ size, at, way }) => ({ ...size, axis: at, way })),
    say('<at> <size> <way?>', ({ at, size, way }) => said({ ...size, axis: at, way: way ?? size.way })),
    say('<at> <way> <size?>', ({ at, way, size }) => ({ ...size, axis: at, way })),
    say('<way> <size> <at?>', ({ way, size, at }) => said({ ...size, axis: at, way })),
    say('<way> <at> <size?>', ({ way, at, size }) => ({ ...size, axis: at, way })),
  ],
  moved: [
    say('<toVerb?> <turned>', ({ turned }) => ({ kind: 'moved' as const, ...turned })),
    // The answer to "which way?".
    say('<sense>', ({ sense }) => ({ kind: 'moved' as const, way: sense })),
    say('<toVerb> <way>', ({ way }) => ({ kind: 'moved' as const, way })),
    say('<toVerb> <at>', ({ at }) => ({ kind: 'moved' as const, axis: at })),
  ],

  bare: [say('<quantity>', ({ quantity }) => valueReading(quantity))],
  introduced: [
    say('<lead> <quantity>', ({ quantity }) => valueReading(quantity)),
    say('<lead?> <state>', ({ state }) => state),
  ],
  reading: [say('<bare>', ({ bare }) => bare), say('<introduced>', ({ introduced }) => introduced)],
  rough: [say('<lead?> <near> <quantity>', ({ quantity }) => quantity)],
  level: [
    say('<reading>', ({ reading }) => [{ kind: 'reading' as const, reading }]),
    say('<trend>', ({ trend }) => [{ kind: 'trend' as const, trend }]),
    say('<trend> <reading>', ({ trend, reading }) => [
      { kind: 'trend' as const, trend },
      { kind: 'reading' as const, reading },
    ]),
    say('<reading> <trend>', ({ reading, trend }) => [
      { kind: 'reading' as const, reading },
      { kind: 'trend' as const, trend },
    ]),
    say('<trend> <to> <quantity>', ({ trend, quantity }) => [
      { kind: 'trend' as const, trend },
      reading(quantity),
    ]),
  ],
  aim: [say('<to> <number> <measure?>', ({ number }) => number)],
  grade: [
    say('<small>', ({ small }) => small),
    say('<unit> <digit>', ({ unit, digit }) => Number(unit + digit)),
    say('<small> <point> <decimals>', ({ small, decimals }) => Number(`${small}.${decimals}`)),
    say('<numeral>', ({ numeral }) => numeral),
  ],

  fixed: [
    say('<done>', ({ done }) => [done]),
    say('<gain>', ({ gain }) => [gain]),
    say('<path>', ({ path }) => [path]),
    say('<panel>', ({ panel }) => [panel]),
    join('<path> <and?> <panel>', ({ path, panel }) => [path, panel]),
    join('<done> <and?> <gain>', ({ done, gain }) => [done, gain]),
  ],
  act: [
    say('<fixed>', ({ fixed }) => fixed),
    // The turn and the "done" after it are one report.
    join('<moved> <and?> <done>', ({ moved }) => [moved]),
    say('<graded>', ({ graded }) => [graded]),
    join('<graded> <and?> <panel>', ({ graded, panel }) => [graded, panel]),
    say('<moved>', ({ moved }) => [moved]),
    join('<moved> <and?> <gain>', ({ moved, gain }) => [moved, gain]),
  ],
  effect: [
    say('<done>', ({ done }) => done),
    say('<moved>', ({ moved }) => moved),
    say('<path>', ({ path }) => path),
    say('<graded>', ({ graded }) => graded),
    say('<panel>', ({ panel }) => panel),
  ],
  gained: [
    join('<gain> <and?> <introduced>', ({ gain, introduced }) =>
      then(gain, { kind: 'reading', reading: introduced }),
    ),
    join('<gain> <and?> <trend>', ({ gain, trend }) => then(gain, { kind: 'trend', trend })),
    // "Gain down forty": down to forty, or down and the meter shows forty.
    doubtfulJoin('<gain> <bare>', ({ gain, bare }) => {
      const both = then(gain, { kind: 'reading', reading: bare });
      return gain.kind === 'gain' && gain.to === undefined && gain.change !== 'full' && bare.kind === 'value'
        ? either<Intent[]>([{ ...gain, to: bare.value }], both)
        : both;
    }),
  ],
  report: [
    say('<level>', ({ level }) => level),
    say('<act>', ({ act }) => act),
    join('<level> <and?> <fixed>', ({ level, fixed }) => then(level, fixed)),
    join('<effect> <and?> <level>', ({ effect, level }) => then(effect, level)),
    say('<gained>', ({ gained }) => gained),
  ],
  correct: [
    say('<correcting> <reading>', ({ reading }) => ({ kind: 'correct' as const, reading })),
    say('<correcting?> <reading> <not> <wrong:number> <measure?>', ({ reading, wrong }) => ({
      kind: 'correct' as const,
      reading,
      not: valueReading(wrong),
    })),
    say('<correcting?> <not> <wrong:number> <measure?> <reading>', ({ reading, wrong }) => ({
      kind: 'correct' as const,
      reading,
      not: valueReading(wrong),
    })),
  ],
  mishap: [say('<sorry?> <slip> <sorry?>', ({ slip }) => slip)],
  body: [
    say('<assent?> <report> <pause?>', ({ assent, report, pause }) => [
      ...(assent ? [assent] : []),
      ...report,
      ...(pause ? [pause] : []),
    ]),
    say('<command>', ({ command }) => [command]),
    say('<mishap>', ({ mishap }) => [mishap]),
    say('<rough>', ({ rough }) => [{ kind: 'rough' as const, value: rough }]),
    say('<correct>', ({ correct }) => [correct]),
    say('<yes>', ({ yes }) => [yes]),
    say('<informed>', ({ informed }) => [informed]),
    // A bare "horizontal" chooses an adjuster, or answers which one was turned.
    say('<axis>', ({ axis }, { asksTurn }) =>
      either<Intent[]>(...(asksTurn ? [] : [[{ kind: 'swap' as const, axis }]]), [{ kind: 'moved', axis }]),
    ),
  ],
  sentence: [say('<body>', ({ body }) => body)],
} satisfies Rules;

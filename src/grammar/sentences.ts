import { NO_SIGNAL } from '../model/reading.ts';
import type { Intent } from './intent.ts';
import { doubt, doubtfulJoin, either, join, means, type Rules, say } from './rule.ts';

/** Adds what was said next. */
const then = (...parts: (Intent | readonly Intent[] | undefined)[]): Intent[] =>
  parts.flatMap((part) => part ?? []);

/** How clauses make a sentence. At most one turn, one gain change and so on, so that nothing counts twice. */
export const sentenceRules = {
  done: means<Intent>(
    { kind: 'done' },
    "[i've|i'm|it's|that's|all|job] done [it|that|turning]|[i|i've] (turned|moved|made|did) (it|that|the turn) [for you]|turned|moved|turn made",
    "(it's|that's) turned|finished|[i'm|i've|it's|that's] finished|there you go|that's me done|that's it done|[that's] that one [is] done|done [that] for you",
    '[that is|turn is|turn] (complete|completed)|turn done|finished turning',
  ),
  /** Acts that do not begin with a number: "one forty two, done", but not "one, half a turn". */
  fixed: [
    say('<done>', ({ done }) => [done]),
    say('<gain>', ({ gain }) => [gain]),
    say('<path>', ({ path }) => [path]),
    say('<panel>', ({ panel }) => [panel]),
    join('<path> [and] <panel>', ({ path, panel }) => [path, panel]),
    join('<done> [and] <gain>', ({ done, gain }) => [done, gain]),
    join('<gain> [and] <done>', ({ gain }) => [gain]),
  ],
  act: [
    say('<fixed>', ({ fixed }) => fixed),
    // The turn and the "done" after it are one report.
    join('<moved> [and] <done>', ({ moved }) => [moved]),
    join("<moved> that's (it|all)", ({ moved }) => [moved]),
    say('<graded>', ({ graded }) => [graded]),
    join('<graded> [and] <panel>', ({ graded, panel }) => [graded, panel]),
    say('<moved>', ({ moved }) => [moved]),
    join('<moved> [and] <gain>', ({ moved, gain }) => [moved, gain]),
  ],
  /** What a reading may follow directly. After a gain change the number might be the gain's. */
  effect: [
    say('<done>', ({ done }) => done),
    say('<moved>', ({ moved }) => moved),
    say('<path>', ({ path }) => path),
    say('<graded>', ({ graded }) => graded),
    say('<panel>', ({ panel }) => panel),
  ],
  before: [say('<done> [and]', ({ done }) => [done]), say('<level> [and]', ({ level }) => level)],
  report: [
    say('<level>', ({ level }) => level),
    say('<act>', ({ act }) => act),
    join('<level> [and] <fixed>', ({ level, fixed }) => then(level, fixed)),
    join('<effect> [and|now|and now] <level>', ({ effect, level }) => then(effect, level)),
    say('<gained>', ({ gained }) => gained),
    join('<before> <gained>', ({ before, gained }) => then(before, gained)),
  ],
  /** A gain change and the reading after it. */
  gained: [
    join('<gain> [and] now <level>', ({ gain, level }) => then(gain, level)),
    join('<gain> [and] <introduced>', ({ gain, introduced }) =>
      then(gain, { kind: 'reading', reading: introduced }),
    ),
    join('<gain> [and] <trend>', ({ gain, trend }) => then(gain, { kind: 'trend', trend })),
    // "Gain down forty": down to forty, or down and the meter shows forty.
    doubtfulJoin('<gain> <bare>', ({ gain, bare }) => {
      const both = then(gain, { kind: 'reading', reading: bare });
      return gain.kind === 'gain' && gain.to === undefined && gain.change !== 'full' && bare.kind === 'value'
        ? either<Intent[]>([{ ...gain, to: bare.value }], both)
        : both;
    }),
  ],
  assent: means<Intent>({ kind: 'yes' }, 'yes|yeah|yep'),
  pause: means<Intent>({ kind: 'wait' }, '[and] (wait|stand by|hold on)'),
  body: [
    say('<assent?> <report> <pause?>', ({ assent, report, pause }) => then(assent, report, pause)),
    say('<command>', ({ command }) => [command]),
    say('<mishap>', ({ mishap }) => [mishap]),
    say('<assent?> <rough>', ({ assent, rough }) => then(assent, { kind: 'rough', value: rough })),
    join('<done> [and] <rough>', ({ done, rough }) => then(done, { kind: 'rough', value: rough })),
    // A number and at once another in its place.
    say('<reading> (sorry|correction|i mean|i meant|make that) <b:reading>', ({ b }) => [
      { kind: 'reading', reading: b },
    ]),
    say('<correct>', ({ correct }) => [correct]),
    say("<reading> that's right", ({ reading }) => [{ kind: 'yes' }, { kind: 'reading', reading }]),
    say('<yes>', ({ yes }) => [yes]),
    ...means<Intent[]>([{ kind: 'yes' }], 'okay|roger|copy [that]|will do'),
    say('<informed>', ({ informed }) => [informed]),
    say('yes <informed>', ({ informed }) => then(informed, { kind: 'yes' })),
    say('no <moved>', ({ moved }) => then({ kind: 'no' }, moved)),
    doubtfulJoin('no <path>', ({ path }) => then({ kind: 'no' }, path)),
    say('no <trend>', ({ trend }) => [{ kind: 'no' as const }, { kind: 'trend' as const, trend }]),
    say('<sorry?> [the] wrong (way|direction) <level>', ({ level }) => then({ kind: 'wrong-way' }, level)),
    say('stop <level>', ({ level }) => then({ kind: 'stop' }, level)),
    say("<act> ((what's|what is) (the reading|it [now])|what have you got)", ({ act }) =>
      then(act, { kind: 'ask-reading' }),
    ),
    // Words that mean one thing from the panel and another from the emitter: a question settles it.
    ...[
      doubt(
        '[a] half',
        (): ReturnType<typeof either<Intent[]>> =>
          either<Intent[]>([{ kind: 'moved', eighths: 4 }], [{ kind: 'path', state: 'partial', by: 'half' }]),
      ),
      doubt('one and a half', () =>
        either<Intent[]>(
          [{ kind: 'moved', eighths: 12 }],
          [{ kind: 'reading', reading: { kind: 'value', value: 1.5 } }],
        ),
      ),
      doubt('up', () =>
        either<Intent[]>([{ kind: 'trend', trend: 'rising' }], [{ kind: 'moved', way: 'up' }]),
      ),
      doubt('down', () =>
        either<Intent[]>([{ kind: 'trend', trend: 'falling' }], [{ kind: 'moved', way: 'down' }]),
      ),
      doubt('right', () => either<Intent[]>([{ kind: 'yes' }], [{ kind: 'moved', way: 'right' }])),
      doubt('[the] <axis>', ({ axis }, { asksTurn }) =>
        either<Intent[]>(...(asksTurn ? [] : [[{ kind: 'swap' as const, axis }]]), [{ kind: 'moved', axis }]),
      ),
      // Said to "Did you turn it the other way?": it was turned as it was reported, or not at all.
      doubt("[no] i didn't", () => either<Intent[]>([{ kind: 'no' }], [{ kind: 'not-turned' }])),
      // The light, or the meter.
      doubt("[i] can't see it", () =>
        either<Intent[]>([{ kind: 'reading', reading: NO_SIGNAL }], [{ kind: 'wait' }]),
      ),
      doubt('cancel', () => either<Intent[]>([{ kind: 'undo' }], [{ kind: 'stop' }])),
      doubt('not clear', () =>
        either<Intent[]>([{ kind: 'path', state: 'blocked' }], [{ kind: 'path', state: 'partial' }]),
      ),
      doubt('negative <number>', ({ number }) =>
        either<Intent[]>(
          [{ kind: 'reading', reading: { kind: 'value', value: 0 - number } }],
          [{ kind: 'correct', reading: { kind: 'value', value: number } }],
        ),
      ),
      doubt('correct <reading>', ({ reading }) =>
        either<Intent[]>([{ kind: 'yes' }, { kind: 'reading', reading }], [{ kind: 'correct', reading }]),
      ),
      doubt('not <a:number> <reading>', ({ a, reading }): Intent[] => [
        { kind: 'correct', reading, not: { kind: 'value', value: a } },
      ]),
      doubt('not <number>', (): Intent[] => [{ kind: 'no' }]),
    ],
  ],
  sentence: [
    say('[copy|roger|alright|hello] <body> [over|thanks|thank you|cheers|mate]', ({ body }) => body),
    say('right [then] <level> [over|thanks]', ({ level }) => level),
    say('(right|lovely|great|good) [then] <done> [over|thanks|mate]', ({ done }) => [done]),
    say('right ready', () => [{ kind: 'resume' }]),
  ],
} satisfies Rules;

import { FilterGrade } from '../model/checklists.ts';
import { NO_SIGNAL, SATURATED, valueReading } from '../model/reading.ts';
import type { Intent } from './intent.ts';
import { measureOf } from './measures.ts';
import { means, type Rules, said, say } from './rule.ts';

const reading = (value: number): Intent => ({ kind: 'reading', reading: valueReading(value) });

/** Undefined: no filter holds back that much, so the number is something else. */
const gradedFilter = (filter: number): Intent | undefined =>
  FilterGrade.safeParse(filter).success
    ? { kind: 'path', state: 'partial', by: 'filter', filter }
    : undefined;

/** What the two report: the meter, its trend, the gain, the path of the beam and the fire panel. */
export const reportingRules = {
  state: [
    ...means(
      NO_SIGNAL,
      'no (signal|reading|light|beam|response|level|input) [at all|yet]',
      'nothing [at all|there|showing|yet]|none|blank|zero signal',
      "[we've|i've] lost (it|signal|the signal|the beam)|lost|[the] signal [is] (lost|gone)|[it's] gone|it's dead",
      "[it's|it has] dropped out|there's nothing|[i] can't see (it|anything|a signal)|i [can] see nothing",
    ),
    ...means(
      SATURATED,
      'saturated|saturation|saturating|fully saturated',
      'maxed [out]|pegged|over range|off [the] scale|full scale|at full scale',
      'overloaded|overload|flooded|swamped|clipping|clipped|signal [is] too (strong|high)|too (strong|much signal)',
    ),
  ],
  lead: means(
    true as const,
    "it's [at|on|reading|showing|about]|it is [at]|we're [at|on|getting]|we are at|that's|there's|still [at|on]|still (reading|showing)",
    "i've got|i have|i get|i see|i'm (getting|reading|seeing)|we've got|we have|got|getting",
    '[the|a] reading [is|of|at|says|shows]|[it] (shows|says|reads)|showing',
    '[the] (meter|display|panel|signal) (is|says|shows|reads) [at]|about|around|roughly|back (to|at)',
  ),
  /** A number in the meter's unit; "fifty volts" is not a reading of a meter in percent. */
  quantity: [
    say('<figure> <measure?>', ({ figure, measure }, { meter }) =>
      measure === undefined || measure === 'own' || !meter || measure === measureOf(meter.unit)
        ? figure
        : undefined,
    ),
  ],
  bare: [say('[at] <quantity>', ({ quantity }) => valueReading(quantity))],
  introduced: [
    say('<lead> <quantity>', ({ quantity }) => valueReading(quantity)),
    say('<lead?> <state>', ({ state }) => state),
  ],
  reading: [say('<bare>', ({ bare }) => bare), say('<introduced>', ({ introduced }) => introduced)],

  trend: [
    ...means(
      'rising' as const,
      "[it's|still|and] (rising|climbing|increasing|improving|going up|coming up|getting (better|stronger|higher))",
      "[it's] (stronger|better|higher)|[it] (rose|climbed|improved|went up|has gone up)|it's [gone] up|gone up",
    ),
    ...means(
      'falling' as const,
      "[it's|still|and] (falling|dropping|decreasing|going down|coming down|getting (worse|weaker|lower))",
      "[it's] (weaker|worse|lower)|[it] (fell|dropped|went down|has gone down)|it's [gone] down|gone down",
    ),
    ...means(
      'steady' as const,
      "[it's|holding] (steady|stable|constant|settled|holding|unchanged)|[it] has settled",
      "no (change|movement|difference)|[it's] [still] [the] same|[it's] not (moving|changing)|nothing's changed",
      "[it] (hasn't|has not) (moved|changed)|[it] didn't (move|change)|makes no difference",
    ),
    ...means(
      'wandering' as const,
      "[it's|still|[it] keeps|and] (wandering|jumping|bouncing|hunting) [about|around|up and down]",
      "[it's|still|[it] keeps|and] moving (about|around)|[it's|[it] keeps] (going|moving) up and down",
      "[it's] all over the place|[it's] (unstable|unsteady|not steady)",
      "[it] (wanders|jumps) [about|around]|[it] won't settle",
    ),
  ],
  level: [
    say('<reading>', ({ reading }) => [{ kind: 'reading' as const, reading }]),
    say('<trend>', ({ trend }) => [{ kind: 'trend' as const, trend }]),
    say('[the] (reading|signal|meter|level) [is] <trend>', ({ trend }) => [
      { kind: 'trend' as const, trend },
    ]),
    say('<trend> <reading>', ({ trend, reading }) => [
      { kind: 'trend' as const, trend },
      { kind: 'reading' as const, reading },
    ]),
    say('<reading> <trend>', ({ reading, trend }) => [
      { kind: 'reading' as const, reading },
      { kind: 'trend' as const, trend },
    ]),
    say("[it's] (up|rose|climbed|went up|gone up) to <quantity>", ({ quantity }) => [
      { kind: 'trend' as const, trend: 'rising' as const },
      reading(quantity),
    ]),
    say("[it's] (down|fell|dropped|went down|gone down) to <quantity>", ({ quantity }) => [
      { kind: 'trend' as const, trend: 'falling' as const },
      reading(quantity),
    ]),
  ],

  aim: [say('to [step] <number> <measure?>', ({ number }) => number)],
  gain: [
    say('[the] (gain|sensitivity) [is] [now] (down|lower|lowered|reduced) <aim?>', ({ aim }) =>
      said({ kind: 'gain' as const, change: 'lowered' as const, to: aim }),
    ),
    say(
      "[i|i've|we've] (lowered|reduced|dropped|turned down|brought down) [the] (gain|sensitivity) <aim?>",
      ({ aim }) => said({ kind: 'gain' as const, change: 'lowered' as const, to: aim }),
    ),
    say("[i|i've|we've] (turned|brought) [the] (gain|sensitivity) down <aim?>", ({ aim }) =>
      said({ kind: 'gain' as const, change: 'lowered' as const, to: aim }),
    ),
    say('[the] (gain|sensitivity) [is] [now] (up|higher|raised|increased) <aim?>', ({ aim }) =>
      said({ kind: 'gain' as const, change: 'raised' as const, to: aim }),
    ),
    say("[i|i've|we've] (raised|increased|turned up|brought up) [the] (gain|sensitivity) <aim?>", ({ aim }) =>
      said({ kind: 'gain' as const, change: 'raised' as const, to: aim }),
    ),
    say("[i|i've|we've] (turned|brought) [the] (gain|sensitivity) up <aim?>", ({ aim }) =>
      said({ kind: 'gain' as const, change: 'raised' as const, to: aim }),
    ),
    say('[the] gain [is] [now] [at|on|set to|to] [step] <number> <measure?>', ({ number }) => ({
      kind: 'gain' as const,
      change: 'set' as const,
      to: number,
    })),
    say("[i|i've|we've] set [the] gain (to|at) [step] <number> <measure?>", ({ number }) => ({
      kind: 'gain' as const,
      change: 'set' as const,
      to: number,
    })),
    ...means(
      { kind: 'gain' as const, change: 'full' as const },
      '[at] (full|maximum|max) gain|[the] gain [is] [now] [at|on|set to|to] (full|maximum|max)',
      'gain all the way up|[turned] [the] gain fully up',
    ),
  ],

  /** A filter named by its grade. Not joined to a reading before it: two numbers could be one. */
  graded: [
    say('[the] <grade> [percent] [test] filter [is] [now] (in|on|in place)', ({ grade }) =>
      gradedFilter(grade),
    ),
    say("[i|i've] put [the] <grade> [percent] [test] filter (in|on)", ({ grade }) => gradedFilter(grade)),
    say('[the] [test] filter of <grade> percent [is] [now] (in|on|in place)', ({ grade }) =>
      gradedFilter(grade),
    ),
  ],
  grade: [
    say('<small>', ({ small }) => small),
    say('<unit> <digit>', ({ unit, digit }) => Number(unit + digit)),
    say('<small> (point|decimal|dot) <decimals>', ({ small, decimals }) => Number(`${small}.${decimals}`)),
    say('<numeral>', ({ numeral }) => numeral),
  ],
  path: [
    ...means(
      { kind: 'path' as const, state: 'blocked' as const },
      "[the] [path|beam] [is|it's] [now] [fully|completely|all] (blocked|covered|obstructed)",
      "[i've] (covered|blocked) (it|the beam|the receiver) [completely|fully]|[receiver|beam] (covered|blocked) completely",
      "[there's] (something|someone|somebody) in the (beam|way|path)",
    ),
    ...means(
      { kind: 'path' as const, state: 'partial' as const },
      "[it's] [the] [path|beam] [is] [now] (partly|partially) (blocked|covered|obstructed)",
      '[i] (partly|partially) (covered|blocked) (it|the beam|the receiver)',
    ),
    ...means(
      { kind: 'path' as const, state: 'partial' as const, by: 'half' as const },
      "[it's] [the] [path|beam] [is] [now] half (blocked|covered|obstructed)",
      '[i] half (covered|blocked) (it|the beam|the receiver)',
    ),
    ...means(
      { kind: 'path' as const, state: 'partial' as const, by: 'filter' as const },
      '[the] [test] filter [is] [now] (in|on|in place)',
    ),
    ...means(
      { kind: 'path' as const, state: 'clear' as const },
      "[the] [path|beam] [is|it's] [now] (clear|unblocked|uncovered|unobstructed)|it is clear|all clear",
      "[the] (cover|filter) [is] (off|removed)|nothing in the (beam|way|path)|[it's] not (blocked|covered)",
      "[i|i've] uncovered (it|the beam|the receiver)",
    ),
  ],
  panel: [
    ...means(
      { kind: 'panel' as const, shows: 'alarm' as const },
      "[the] panel (shows|says|is in|in|gone into|went into) [an|fire] alarm|[it's] [in|fire] alarm|[we've|we] got [an] alarm",
    ),
    ...means(
      { kind: 'panel' as const, shows: 'fault' as const },
      "[the] panel (shows|says|is in|in|gone into|went into) [a] fault|[it's] [in] fault|[we've|we] got [a] fault",
    ),
    ...means(
      { kind: 'panel' as const, shows: 'normal' as const },
      '[the] panel [is|shows|says] [back to] (normal|restored|healthy)|[back to] normal|restored',
      '[the] (fault|alarm) [is|has] (cleared|gone|restored)|no fault',
    ),
  ],
  whom: [
    ...means('the control room', '[the] control [room]|[the] monitoring (station|centre)'),
    ...means('security', '[the] security [desk|guard|office]'),
    ...means('reception', '[the] reception [desk]'),
    ...means('the site manager', '[the] [site|building|shift|duty] manager'),
    ...means('the fire brigade', '[the] fire (brigade|service|department)'),
    ...means('the occupier', '[the] (occupier|client|owner|customer|tenants)'),
    ...means('everyone', 'everyone|everybody'),
  ],
  informed: [
    say("[i've|we've|i|we] (told|informed|notified|rang|called) <whom>", ({ whom }) => ({
      kind: 'told' as const,
      who: whom,
    })),
  ],
} satisfies Rules;

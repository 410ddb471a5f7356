import { FilterGrade } from '../model/checklists.ts';
import { NO_SIGNAL, SATURATED, valueReading } from '../model/reading.ts';
import type { Intent } from './intent.ts';
import { measureOf } from './measures.ts';
import { means, type Rules, said, say } from './rule.ts';

const reading = (value: number): Intent => ({ kind: 'reading', reading: valueReading(value) });

/** Undefined: no filter holds back that much, so the number is something else. */
export const gradedFilter = (filter: number): Intent | undefined =>
  FilterGrade.safeParse(filter).success
    ? { kind: 'path', state: 'partial', by: 'filter', filter }
    : undefined;

/** What the two report: the meter, its trend, the gain, the path of the beam and the fire panel. */
export const reportingRules = {
  state: [
    ...means(
      NO_SIGNAL,
      'no (signal|reading|light|beam|response|level|input) [at all|yet]',
      '[there is] nothing [at all|there|showing|yet]|none|blank|zero signal|[it] went dead|gone dead',
      "[we've|i've] lost (it|signal|the signal|the beam)|lost|[the] signal [is] (lost|gone)|[it's] gone|it's dead",
      "[it's|it has] dropped out|there's nothing|[i] can't see (anything|a signal)|i [can] see nothing",
    ),
    ...means(
      SATURATED,
      'saturated|saturation|saturating|fully saturated',
      "[it's] maxed [out]|pegged|pinned|topped out|maxing out|over range|[it's] [gone] off [the] scale|full scale|at full scale|overloading",
      'overloaded|overload|flooded|swamped|clipping|clipped|signal [is] too (strong|high)|too (strong|much signal)',
    ),
  ],
  lead: means(
    true as const,
    "it's [at|on|reading|showing|sitting at|sat at|now at]|it is [at]|we're [at|on|getting]|we are at|that's|there's|still [at|on]|still (reading|showing)",
    "i've got|i have|i get|i see|i'm (getting|reading|seeing|at|on)|we've got|we have|got|getting|i make (it|that)|sitting at",
    '[the|a] reading [is|of|at|says|shows]|[it] (shows|says|reads)|showing',
    '[the] (meter|display|panel|signal) (is|says|shows|reads) [at|on]|back (to|at)|bang on|dead on|exactly',
    "it's (still|exactly)|it's gone to|i can see",
  ),
  /** Said of a number that is not quite what the meter shows. */
  near: means(
    true as const,
    "[it's] (about|around|roughly|nearly|almost|maybe|perhaps|approximately)|[it's] (somewhere|something) (around|like|near)",
    "[it's] just (under|over|below|above|short of)|[it's] (close|near) to|it's near|call it|i think [it's]|[it's] say [about]|probably",
  ),
  rough: [
    say('<lead?> <near> <quantity> [or so|or thereabouts|ish|odd|i think]', ({ quantity }) => quantity),
    say(
      '<lead?> <quantity> (or so|or thereabouts|ish|odd|or near enough|give or take|i think|roughly)',
      ({ quantity }) => quantity,
    ),
  ],
  /** A number in the meter's unit; "fifty volts" is not a reading of a meter in percent. */
  quantity: [
    say('<figure> <measure?>', ({ figure, measure }, { meter }) =>
      measure === undefined || measure === 'own' || !meter || measure === measureOf(meter.unit)
        ? figure
        : undefined,
    ),
  ],
  bare: [
    say('[at] <quantity>', ({ quantity }) => valueReading(quantity)),
    say('<quantity> (exactly|dead|again|still|on the (meter|panel|display))', ({ quantity }) =>
      valueReading(quantity),
    ),
  ],
  introduced: [
    say('<lead> <quantity>', ({ quantity }) => valueReading(quantity)),
    say('<lead> <quantity> (exactly|dead|on the (meter|panel|display))', ({ quantity }) =>
      valueReading(quantity),
    ),
    say('<lead?> <state>', ({ state }) => state),
  ],
  reading: [say('<bare>', ({ bare }) => bare), say('<introduced>', ({ introduced }) => introduced)],

  trend: [
    ...means(
      'rising' as const,
      "[it's|still|and] (rising|climbing|increasing|improving|going up|coming up|getting (better|stronger|higher))",
      "(it's still|slowly) (rising|climbing|going up|coming up)|(rising|climbing|going up) (again|slowly)|it (went|came) up a bit|it's gone up a bit|it goes up",
      "[it's] a [little] bit (stronger|better|higher)",
      "[it's] (creeping|inching|edging|going|coming) up [slowly|nicely|fast|a bit]|[it's] picking up|[it's] (stronger|better|higher)|[it] (rose|climbed|improved|went up|has gone up)|it's [gone] up|gone up",
    ),
    ...means(
      'falling' as const,
      "[it's|still|and] (falling|dropping|decreasing|going down|coming down|getting (worse|weaker|lower))",
      "(it's still|slowly) (falling|dropping|going down|coming down)|(falling|dropping|going down) (again|slowly)|it (went|came) down a bit|it's gone down a bit|it goes down",
      "[it's] a [little] bit (weaker|worse|lower)|it's (dropped|falling off)|it dropped a bit",
      "[it's] (creeping|inching|edging|going|coming) down [slowly|fast|a bit]|[it's] dropping (off|away)|[it's] tailing off|[it's] (weaker|worse|lower)|[it] (fell|dropped|went down|has gone down)|it's [gone] down|gone down",
    ),
    ...means(
      'steady' as const,
      "[it's|holding] (steady|stable|constant|settled|holding|unchanged)|[it] has settled",
      "no (change|movement|difference) [at all|yet]|[it's] about the same|nothing changed|it's holding steady|[it's] [still] [the] same|[it's] not (moving|changing)|nothing's changed",
      "[it] (hasn't|has not) (moved|changed)|[it] didn't (move|change|budge)|makes no difference",
      "[it] (hasn't|has not) budged|[it's] not budging|[the] same again|nothing happened|no different",
    ),
    ...means(
      'wandering' as const,
      "[it's|still|[it] keeps|and] (wandering|jumping|bouncing|hunting) [about|around|up and down]",
      "[it's|still|[it] keeps|and] moving (about|around)|[it's|[it] keeps] (going|moving) up and down",
      "[it's] all over the (place|shop)|[it's] (jumping|bouncing) all over|[it] won't (sit|stay) still|[i] can't get a steady reading|[it's] (unstable|unsteady|not steady)",
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
    say(
      "[it's] (up|rose|climbed|went up|gone up|come up|came up|jumped up) to <quantity>",
      ({ quantity }) => [{ kind: 'trend' as const, trend: 'rising' as const }, reading(quantity)],
    ),
    say(
      "[it's] (down|fell|dropped|went down|gone down|come down|came down|dropped (back|off)) to <quantity>",
      ({ quantity }) => [{ kind: 'trend' as const, trend: 'falling' as const }, reading(quantity)],
    ),
  ],

  aim: [say('to [step] <number> <measure?>', ({ number }) => number)],
  gain: [
    say('[the] (gain|sensitivity) [is] [now] (down|lower|lowered|reduced) <aim?>', ({ aim }) =>
      said({ kind: 'gain' as const, change: 'lowered' as const, to: aim }),
    ),
    say(
      "[i|i've|we've] (lowered|reduced|dropped|turned down|brought down|backed off|knocked down) [the] (gain|sensitivity) <aim?>",
      ({ aim }) => said({ kind: 'gain' as const, change: 'lowered' as const, to: aim }),
    ),
    say(
      "[i|i've|we've] (turned|brought|knocked|backed) [the] (gain|sensitivity) (down|off) [a bit] <aim?>",
      ({ aim }) => said({ kind: 'gain' as const, change: 'lowered' as const, to: aim }),
    ),
    say('[the] (gain|sensitivity) [is] [now] (up|higher|raised|increased) <aim?>', ({ aim }) =>
      said({ kind: 'gain' as const, change: 'raised' as const, to: aim }),
    ),
    say("[i|i've|we've] (raised|increased|turned up|brought up) [the] (gain|sensitivity) <aim?>", ({ aim }) =>
      said({ kind: 'gain' as const, change: 'raised' as const, to: aim }),
    ),
    say("[i|i've|we've] (turned|brought|bumped|put) [the] (gain|sensitivity) up [a bit] <aim?>", ({ aim }) =>
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
      "[it's] [at|on] (full|maximum|max) gain|gain to full",
      '[the] gain [is] [now] [at|on|set to|to] (full|maximum|max)',
      'gain all the way up|[turned] [the] gain fully up|[the] gain [is] (full up|flat out|right up)',
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
      "[there's] (something|someone|somebody) [is] in (the|my) (beam|way|path)|(someone|somebody) [is] (walked|walking|stood|standing) (through|in) (it|the beam)",
      "[the] cover [is] [now] on|[it's] covered up|[the] card [is] (in|up) [now]|[the] card is in the (beam|way)",
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
      "[the] [path|beam] [is|it's] [now] (clear|unblocked|uncovered|unobstructed)|[the] (path|beam) is clear again|[i] took (it|the card) away|it is clear|all clear",
      "[the] (cover|filter|card) [is] [now] (off|out|removed|away)|[it's] clear again|nothing in the (beam|way|path)|[it's] not (blocked|covered)",
      "[i|i've] uncovered (it|the beam|the receiver)",
    ),
  ],
  panel: [
    ...means(
      { kind: 'panel' as const, shows: 'alarm' as const },
      "[the] panel [is|has] (shows|says|in|gone into|went into|showing) [an|fire] alarm|[it's] [in|fire] alarm|[we've|we] got [an] alarm",
      "[it's|it has] [gone] into alarm|we're in alarm|we have an alarm|[the] alarm [is] (up|on|in)",
    ),
    ...means(
      { kind: 'panel' as const, shows: 'fault' as const },
      "[the] panel [is|has] (shows|says|in|gone into|went into|showing) [a] fault|[it's] [in] fault|[we've|we] got [a] fault",
      "[it's|it has] [gone] into fault|we're in fault|we have a fault|[the] fault [is] (up|on|in)|it's showing [a] fault",
    ),
    ...means(
      { kind: 'panel' as const, shows: 'normal' as const },
      '[the] panel [is|shows|says] [back to] (normal|restored|healthy)|[back to] normal|restored',
      "it's (back to normal|normal [again])",
      '[the] (fault|alarm) [is|has] (cleared|gone|restored)|no fault|all normal|everything [is] normal|normal again',
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

import type { Intent } from './intent.ts';
import { means, type Rules, say } from './rule.ts';

const intent = <K extends Intent['kind']>(kind: K): { kind: K } => ({ kind });

/** What went otherwise than it should, and what nobody is sure of. */
export const mishapRules = {
  sorry: means(true as const, 'sorry|my mistake|my fault|oops'),
  mishap: [
    say('<sorry?> <slip> <sorry?>', ({ slip }) => slip),
    ...means(
      intent('unsure'),
      "[i'm] not sure|unsure|[i] don't know|no idea|[i] (can't|couldn't) tell|[i] can't say|i'm not certain",
      'skip [it|that]|(pass|skip) on that|leave that one',
    ),
    ...means(intent('why'), "why|why [is] that|tell me why|what's the reason|what is the reason|what for"),
  ],
  slip: [
    ...means(
      intent('knocked'),
      '(someone|somebody) [has|is|just] (knocked|bumped|hit|moved|leaned on) (it|the unit|the emitter|the bracket)',
      "[i|i've|we|we've] (knocked|bumped) (it|into it|the unit|the emitter|the bracket)|i hit it",
      'i (hit|leaned on) (the unit|the emitter|the bracket)|i leaned on it|something [has] (hit|knocked|bumped) it',
      '(someone|somebody) [has|is|just] bumped into it|[it|the (unit|emitter|bracket)] (got|was|has been) hit',
      "it [was|got|has been|it's been] (knocked|bumped)|it's been (knocked|bumped|moved)|knocked|bumped",
      'the ladder (hit|knocked|bumped|moved) it|[the] (bracket|mount|unit|emitter) [is|has|got] (moved|slipped|knocked|been moved|been knocked)',
      'it slipped|it has slipped',
    ),
    ...means(
      intent('not-turned'),
      "[no] [i|we] (didn't|did not|haven't|have not|never) [yet] (turn|turned|move|moved|touch|touched|do|done|make|made) (it|that|that one|the turn|the screw|anything) [yet]",
      "[i've|we've] not (turned|moved|touched|done|made) (it|that|the turn|anything) [yet]",
      "it (hasn't|has not) been turned [yet]|(not|nothing) turned [yet]|i turned nothing",
    ),
    ...means(
      intent('miscounted'),
      "[i|i've] lost count [of the turns]|[i think] [i|i've|it] (went|gone|turned it|turned) too far|[i|i've] (overshot|overdid) [it]",
      "[i] (don't|didn't) (know|remember|see|count) how (far|much) [i turned it|it turned|i turned]",
      "[i'm] not sure how (far|much) [i turned it|it turned|i turned|i went]",
      "[i] turned it too much|too far|[i|i've] miscounted",
    ),
    ...means(
      intent('wrong-way'),
      "[no] [that's|that was|it's|it went|going|i went|went|i've gone|turned it|i turned it|i've turned it|i turned|i did it|i've done it] [the] wrong (way|direction)",
    ),
    ...means(
      intent('wrong-screw'),
      "[no] [that's|that was|i turned|i've turned|turned|i moved|i've moved|moved|i did|i've done|did] the wrong (screw|adjuster|one|axis|knob)",
      '[no] wrong (screw|adjuster|one|knob)|i turned the other one',
    ),
  ],
} satisfies Rules;

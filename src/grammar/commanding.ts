import type { Intent } from './intent.ts';
import { means, type Rules, say } from './rule.ts';

const intent = <K extends Intent['kind']>(kind: K): { kind: K } => ({ kind });

/** Questions, answers and corrections. */
export const commandingRules = {
  correcting: means(
    true as const,
    "no|nope|[no] wrong|[no] that's wrong|[sorry] correction|[no] sorry|actually|incorrect",
    '[no|sorry] i (said|meant|mean|say again)|[no] make (that|it)|[no] [it|that] should (be|say)',
    '(correct|change) (that|it) to',
  ),
  correct: [
    say('<correcting> <reading>', ({ reading }) => ({ kind: 'correct' as const, reading })),
    say('<correcting?> <reading> not <not:number> <measure?>', ({ reading, not }) => ({
      kind: 'correct' as const,
      reading,
      not: { kind: 'value' as const, value: not },
    })),
    say('<correcting?> not <not:number> <measure?> but <reading>', ({ reading, not }) => ({
      kind: 'correct' as const,
      reading,
      not: { kind: 'value' as const, value: not },
    })),
  ],

  yes: means(
    intent('yes'),
    "yes|yeah|yep|yup|aye|affirmative|affirm|[yes] [that's] correct|[yes|yeah|yep] that's (right|it)|confirmed|exactly|[yes] it is",
    "spot on|[yes] that's the one|absolutely|certainly|[yes] (i did|that is right)|yes yes",
  ),

  command: [
    ...means(
      intent('no'),
      "no|nope|nah|negative|[no] [that's] wrong|[no] [that's] (incorrect|not right|not correct)|no it (isn't|is not)|no it's not",
      "not (quite|really)|[no] that's not it|neither [of them]|no (sorry|no)|it isn't",
    ),
    ...means(
      intent('undo'),
      '(scratch|undo|forget|disregard|cancel|strike|delete|ignore) (that|it|last|the last one)|undo|disregard',
      '(take|took) (that|it) back|(forget|ignore|scratch) (i said that|what i said|the last (one|reading))|i take that back',
    ),
    ...means(
      intent('repeat'),
      'say [that|it] again|[please] repeat [that|it]|say again [all]|come again|once more|one more time|pardon [me]|sorry',
      "what was that [again]|what did you say|[i] didn't (catch|hear|get) (that|it)|i missed that|(can|could) you (repeat|say) (that|it) [again]|can you repeat",
      "sorry (say again|what was that)|what was the last one|say [that|it] [once] more|what's the order|what (do i|should i) do",
    ),
    ...means(
      intent('wait'),
      'wait [one|a moment|a minute|a second|for me]|hold [on|it]|stand by|hang on|(one|a|just a) (moment|second|sec|minute)',
      "give (me|us) (a|one|two) (moment|second|sec|minute|minutes|seconds)|[i'm] not ready|not yet|not done [yet]|pause|hold|bear with (me|us)",
      "hang on (a|one) (moment|second|sec|minute)|hold on (a|one) (moment|second|sec|minute)|let me (get|find) my (feet|footing|balance)|i'm coming down|coming down",
      "wait (a bit|there|wait)|stand by one|i'm not ready yet|[i] can't (read|see) the (meter|display)|[i] can't read it",
      "i'm moving the ladder|moving the ladder|i have to (come|get|climb) down",
    ),
    ...means(
      intent('resume'),
      "go [on|ahead]|resume|carry on|continue|proceed|keep going|[i'm|we're] ready [when you are]|i'm back [up]",
      "we're back|back now|ready (to go|again)|i'm in position|i'm (up|up there|there)|on the ladder|what now",
      "go for it|[i'm|we're] good to go|back (on the ladder|in position|up)|in position|what's next|next|[i'm] all yours",
    ),
    ...means(
      { kind: 'cannot' as const, why: 'stuck' as const },
      "[it's] (stuck|jammed|seized|frozen) [solid|fast|up]|[it's] rusted [solid|up]|[the] (screw|adjuster) [is|it's] (stuck|jammed|seized)|[i] (can't|couldn't) (shift|budge|free) it|[it] won't (turn|move|budge)|[i] can't (turn|move) it|[it] can't be turned",
      "[i] can't [do it|turn it|move it|shift it] (it's|it is|the (screw|adjuster|knob) is) (stuck|jammed|seized|frozen|rusted) [solid|fast|up]",
      "[i] can't get it to (turn|move)|(that|this) one is (stuck|jammed|seized)",
      "(no|sorry) it's (stuck|jammed|seized)|it's (stuck|jammed|seized) again|it is (stuck|jammed|seized)|still stuck|stuck sorry",
      "[i] can't (turn|move|shift) (the (screw|adjuster)|that one|this one)|it's stuck [i] can't (turn|move) it|the (screw|adjuster) won't (turn|move|budge)",
    ),
    ...means(
      { kind: 'cannot' as const, why: 'end-of-travel' as const },
      "[it's|i'm] [at the] end of [the] (travel|thread|adjustment)|[it's|i'm] (at|on|hit) the (stop|end stop)",
      "[it's|i'm] at (the end|its end|the end of its travel)|that's as far as it goes|it's hit the (end|stop)|[there's] no more (travel|thread) left",
      "it won't (go|turn) [any] further|[i] can't turn it any further|there's no more (travel|thread)",
      "[it's] [run|ran] out of (travel|thread|adjustment)|no more (travel|thread|adjustment)|bottomed out",
      "[it] won't go any (further|more)|can't go any further|[i've] run out of (turns|screw)|[it's] as far as it (goes|will go)|[it's] at the end",
    ),
    ...means(
      { kind: 'cannot' as const, why: 'out-of-reach' as const },
      "[i] can't reach (that|that one|the screw|the adjuster)|i can't reach|[it's] out of my reach|[it's] too far to reach",
      "[it's] out of reach|[i] can't (reach|get to|get at) (it|the adjuster|the screw)|can't reach|[i] can't get my hand (in|to it|in there)",
    ),
    ...means(
      { kind: 'cannot' as const, why: 'unsaid' as const },
      "[i] can't do this|we can't do (it|that|this)|it can't be done|can't be done|no i can't",
      "[i] can't [do] [it|that]|unable|no can do|not possible|impossible",
    ),
    say('(swap|swap over|change over)', () => ({ kind: 'swap' as const })),
    ...means(
      { kind: 'swap' as const },
      '(swap|switch|change) [the] (adjuster|adjusters|screw|screws|axis)|[go to] [the] (other|next) (adjuster|screw|one)',
    ),
    say(
      '(swap|switch|change|go|swapped|switched|changed|moved|moving) [over] to [the] <axis>',
      ({ axis }) => ({
        kind: 'swap' as const,
        axis,
      }),
    ),
    say('(try|do) [the] <axis>', ({ axis }) => ({ kind: 'swap' as const, axis })),
    ...means(
      intent('ask-reading'),
      "(what's|what is) (the reading|it at|it reading|it showing|it saying|it say|it now)|what is it|reading",
      'what (have you got|do you (see|have|get|read)|are you (getting|reading|seeing)|does it (say|read|show))',
      '(give me|read me|send me) (a|the) reading|what reading|how is it [now]',
    ),
    ...means(
      intent('accept'),
      '[i|we] accept [it|that|this] [alignment|position]|accept the alignment|accepted|sign it off',
    ),
    ...means(intent('stop'), 'stop|stop [stop] stop|stop (it|now|everything|the job)|abort|halt'),
    ...means(intent('start'), "start [again|the job|now]|begin [again]|restart|let's (go|start|begin)"),
  ],
} satisfies Rules;

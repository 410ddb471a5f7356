import type { Action, Advice } from '../../src/model/advice.ts';
import { type AloneWay, isOnePhone } from '../../src/model/alone.ts';
import type { Seat } from '../../src/model/facts.ts';
import { isMine } from '../../src/model/mine.ts';
import type { Mounting } from '../../src/model/mounting.ts';
import type { Placed } from '../../src/model/placed.ts';
import { causeText } from '../../src/phrases/causes.ts';
import { AFTERWARDS } from '../../src/phrases/cautions.ts';
import { DO_NOT_TURN } from '../../src/phrases/do-not-turn.ts';
import { beamText } from '../../src/phrases/mounting.ts';
import { NOT_TAUGHT } from '../../src/phrases/not-taught.ts';
import { EMITTER_BACK, ORDER_WAITS } from '../../src/phrases/notices.ts';
import { AS_LAST_SEEN, keptHereText, PAGES_NOT_KEPT } from '../../src/phrases/offline.ts';
import { awayText } from '../../src/phrases/presence.ts';
import { KEEP_OPEN } from '../../src/phrases/service.ts';
import { inOwnWords } from '../language/languages.ts';
import { Drawing } from './drawings.tsx';
import { ASKING, Band, type Kind, kindOf, PAUSED, RESTING, STOPPED, UNSURE } from './kinds.tsx';
import './instruction.css';

interface FaceProps {
  instruction: Placed<'instruction'>;
  seat: Seat;
  /** One person alone, and how. */
  alone?: AloneWay | undefined;
  /** Server clock, ms. */
  now: number;
  /** Small, without the drawing: there are other things on the screen. */
  compact?: boolean;
  /** The phone of the other seat has no link now: what is asked of it waits. */
  otherIsAway?: boolean;
  /** How the emitter hangs: on the ladder the words follow it. */
  mounting?: Mounting | undefined;
  /** At the panel: whether the order has reached the ladder. */
  receipt?: { text: string; reached: boolean } | undefined;
}

/** An instruction that is valid now. */
export function Face({
  instruction,
  seat,
  alone,
  now,
  compact = false,
  otherIsAway = false,
  mounting,
  receipt,
}: FaceProps) {
  const { advice, show, why } = instruction;
  const { action } = advice;
  const mine = isMine(advice, seat, alone);
  const other: Seat = seat === 'panel' ? 'emitter' : 'panel';
  const until = 'until' in action ? action.until : undefined;
  const hangs = seat === 'emitter' || isOnePhone(alone) ? mounting : undefined;
  const beam = action.kind === 'turn' ? beamText(hangs, action.axis) : undefined;
  const size = compact ? 'face face-compact' : 'face';
  return (
    <section class={mine ? size : `${size} face-other`} data-kind={action.kind}>
      <Band kind={kindOf(action, hangs)} note={mine ? undefined : `for the ${advice.to}`} />
      {action.kind === 'check' ? <Causes causes={action.causes} /> : <Show text={show} />}
      {beam && <p class="beam-way">{beam}</p>}
      {receipt && (
        <p class={receipt.reached ? 'receipt reached' : 'receipt'} role="status">
          {receipt.text}
        </p>
      )}
      {otherIsAway && advice.to !== seat && <p class="past">{awayText(other)}</p>}
      {until !== undefined && <Countdown from={instruction.at} until={until} now={now} />}
      {!compact && <Drawing action={action} />}
      {why && <p class="why">{leavesAfterwards(advice) ? AFTERWARDS : why}</p>}
    </section>
  );
}

/** The order in one line or a few. It is as large as its longest word allows: no word is broken. */
const Show = ({ text: english }: { text: string }) => {
  const text = inOwnWords(english);
  // Where a space does not break, the words beside it are one: « accepter ».
  const wide = Math.max(SHORTEST_LINE_EM, ...text.split(/[^\S\u00a0]+/).map(widthOf));
  return (
    <h1
      class={text.length > LONG ? 'show long' : 'show'}
      translate={false}
      style={{ '--wide': wide.toFixed(2) }}
    >
      {text}
    </h1>
  );
};

/** With a shorter line, the order would fill the screen. */
const SHORTEST_LINE_EM = 5.1;

/** A longer order in the largest letters would not fit above its keys. */
const LONG = 42;

/** About how wide a word is in bold letters, in parts of their height. */
const widthOf = (word: string): number =>
  [...word].reduce(
    (sum, letter) => sum + (/[mwMW@]/.test(letter) ? 1.06 : isNarrow(letter) ? 0.44 : 0.71),
    0,
  );

const isNarrow = (letter: string): boolean => /[ijltfrI.,:;'’!|()]/.test(letter);

/** After an alignment alone the outputs are still isolated. After a signed commissioning they are restored. */
const leavesAfterwards = ({ action, rule }: Advice): boolean =>
  action.kind === 'finished' && rule !== 'signed';

const Causes = ({ causes }: { causes: readonly string[] }) => (
  <div class="causes">
    <Show text="Please check" />
    <ol>
      {causes.map((cause) => (
        <li key={cause}>{causeText(cause)}</li>
      ))}
    </ol>
  </div>
);

/** The seconds that are left, in a ring that becomes empty. */
function Countdown({ from, until, now }: { from: number; until: number; now: number }) {
  const left = Math.max(0, Math.ceil((until - now) / 1000));
  const share = Math.min(1, Math.max(0, (until - now) / Math.max(1, until - from)));
  return (
    <p class="countdown" role="timer" aria-live="off">
      <svg class="countdown-ring" viewBox="-60 -60 120 120" aria-hidden="true">
        <circle class="countdown-all" r="52" />
        <circle
          class="countdown-left"
          r="52"
          pathLength={1}
          stroke-dasharray={`${share} 1`}
          transform="rotate(-90)"
        />
      </svg>
      <span class="countdown-words">
        <span class="countdown-number">{left || '…'}</span>{' '}
        {left === 1 ? 'second' : left ? 'seconds' : 'nearly'}
      </span>
    </p>
  );
}

interface PlainFaceProps {
  kind: Kind;
  show: string;
  why: string;
  compact?: boolean | undefined;
}

const PlainFace = ({ kind, show, why, compact }: PlainFaceProps) => (
  <section class={compact ? 'face face-compact' : 'face'}>
    <Band kind={kind} />
    <Show text={show} />
    {why && <p class="why">{why}</p>}
  </section>
);

/** The phone at the panel cannot tell anything yet. */
export const UntaughtFace = ({ compact }: Plain) => (
  <PlainFace kind={RESTING} {...NOT_TAUGHT} compact={compact} />
);

/** Words from this seat could mean two things. */
export const QueryFace = ({ text, compact }: Plain & { text: string }) => (
  <PlainFace kind={ASKING} show={text} why="" compact={compact} />
);

interface Plain {
  compact?: boolean;
}

export const PausedFace = ({ compact }: Plain) => (
  <PlainFace
    kind={PAUSED}
    show="Waiting"
    why="There is no step until one of you says go on."
    compact={compact}
  />
);

/** The next order is for the emitter, and its phone was away. */
export const HeldFace = ({ compact, isBack }: Plain & { isBack: boolean }) => (
  <PlainFace
    kind={PAUSED}
    show={isBack ? 'Emitter: ready?' : 'Emitter away'}
    why={isBack ? EMITTER_BACK : ORDER_WAITS}
    compact={compact}
  />
);

export const StoppedFace = ({ compact }: Plain) => (
  <PlainFace
    kind={STOPPED}
    show="Stopped"
    why="There is no step until one of you starts again."
    compact={compact}
  />
);

export const RestingFace = ({ waitsFor, compact }: Plain & { waitsFor: Seat | undefined }) => (
  <PlainFace
    kind={RESTING}
    show={waitsFor ? `Waiting for the ${waitsFor} phone` : 'Hands off'}
    why={
      waitsFor
        ? 'The first step comes when both have joined.'
        : 'There is no step now. Go on, or say what the meter shows.'
    }
    compact={compact}
  />
);

interface UnsureProps extends Plain {
  instruction: Placed<'instruction'> | undefined;
  /** How many things were said or pressed and are not sent yet. */
  waiting: number;
  /** The pages would not open again without a link. */
  pagesNotKept: boolean;
  /** The link is lost because the server has said that it stops. */
  serverStops: boolean;
}

/** The link is lost: the last instruction is shown as past, and nobody may begin it. */
export const UnsureFace = ({ instruction, waiting, pagesNotKept, serverStops, compact }: UnsureProps) => (
  <section class={compact ? 'face face-compact unsure' : 'face unsure'}>
    <Band kind={UNSURE} note="connecting again" />
    <Show text={DO_NOT_TURN} />
    {instruction && (
      <p class="past">
        Asked before: <strong>{instruction.show}</strong>. If it is already done, say so.
      </p>
    )}
    <p class="past">{keptHereText(waiting)}</p>
    <p class="why">{pagesNotKept ? PAGES_NOT_KEPT : serverStops ? KEEP_OPEN : AS_LAST_SEEN}</p>
  </section>
);

/** What a hand may be unable to do, or may do in the wrong direction. */
export const canFail = ({ kind }: Action): boolean =>
  kind === 'turn' || kind === 'gain' || kind === 're-aim' || kind === 'block' || kind === 'cover';
export const canGoWrong = ({ kind }: Action): boolean => kind === 'turn';

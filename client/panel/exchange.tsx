import { useEffect, useMemo, useRef } from 'preact/hooks';
import { CAUTIONS_READ } from '../../src/phrases/cautions.ts';
import { exchange, type Passage } from '../../src/record/exchange.ts';
import { clock } from '../browser/times.ts';
import type { Pending } from '../link/link.ts';
import { letterText } from '../seat/letter-text.ts';
import type { Room } from '../seat/use-room.ts';
import { type Made, madeOf } from './made.ts';

/** The whole exchange of the job, newest last. `onPick` opens a report of the crew, to correct it or take it back. */
export function Exchange({ room, onPick }: { room: Room; onPick: (made: Made) => void }) {
  const { link, job } = room;
  const list = useRef<HTMLOListElement>(null);
  const passages = useMemo(() => exchange(link.entries, job.setup?.meter), [link.entries]);
  useEffect(() => {
    const { current } = list;
    if (current) current.scrollTop = current.scrollHeight;
  }, [link.entries, link.outbox.length]);
  const lines = useMemo(
    () => passages.map((passage) => <PassageLine key={passage.seq} passage={passage} onPick={onPick} />),
    [passages],
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls by itself, and the keyboard must reach it to do so.
    <ol class="exchange" ref={list} aria-label="What was said" tabIndex={0}>
      {lines}
      {link.outbox.map((pending) => (
        <PendingLine key={pending.letter.id} pending={pending} />
      ))}
    </ol>
  );
}

const NAMES = { panel: 'Panel', emitter: 'Emitter', ladderline: 'Ladderline' } as const;

function PassageLine({ passage, onPick }: { passage: Passage; onPick: (made: Made) => void }) {
  const { who, text, tone, at, person } = passage;
  const made = madeOf(passage);
  const alone = made.length === 1 && made[0]?.seq === passage.seq;
  return (
    <li class={`passage-line tone-${tone} by-${who}`}>
      <p class="passage-head">
        <span>{person ? `${NAMES[who]}, ${person}` : NAMES[who]}</span>{' '}
        <time dateTime={new Date(at).toISOString()}>{clock(at, true)}</time>
      </p>
      {!alone && (
        <p class="passage-text" translate={!isVerbatim(passage)}>
          {text}
        </p>
      )}
      {made.map((one) => (
        <MadeLine key={one.seq} made={one} onPick={onPick} />
      ))}
    </li>
  );
}

/** Words of people, as they said or typed them. What a button says is ours. */
const isVerbatim = ({ fact, text }: Passage): boolean =>
  (fact.type === 'said' && fact.via !== 'button') ||
  (fact.type === 'remark' && text !== CAUTIONS_READ) ||
  fact.type === 'watcher-remark';

function MadeLine({ made, onPick }: { made: Made; onPick: (made: Made) => void }) {
  const { text, counts, reported } = made;
  if (!counts) return <p class="made gone">{<del>{text}</del>} taken back</p>;
  if (!reported) return <p class="made">{text}</p>;
  return (
    <button type="button" class="made made-button" onClick={() => onPick(made)}>
      {text} <span class="made-change">Change</span>
    </button>
  );
}

function PendingLine({ pending: { letter } }: { pending: Pending }) {
  return (
    <li class="passage-line pending">
      <p class="passage-head">Waiting to be sent</p>
      <p class="passage-text">{letterText(letter)}</p>
    </li>
  );
}

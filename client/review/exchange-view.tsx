import { Fragment } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { soundOf } from '../../src/log/enclosure.ts';
import type { FactOf } from '../../src/model/facts.ts';
import type { Line } from '../../src/phrases/describe.ts';
import type { Item, Passage } from '../../src/record/exchange.ts';
import { matching } from '../../src/record/matching.ts';
import { clock, day } from '../browser/times.ts';
import type { Picks } from '../charts/marker.tsx';
import { useMoreAndMore } from '../ui/in-steps.ts';
import { EntryLinks, entryId } from './entry-links.tsx';
import { type Listener, Sound } from './sound.tsx';

const WHO: { [who in Line['who']]: string } = {
  panel: 'Panel',
  emitter: 'Emitter',
  ladderline: 'Ladderline',
};

/** The kind of a line in words: colour or place alone is never enough. */
const TONE: { [tone in Line['tone']]?: string } = {
  question: 'asks',
  notice: 'notice',
  remark: 'remark',
  readback: 'reads back',
  fact: 'understood as',
};

/** Lines that are drawn at first. */
const SCREENFUL = 20;

type Props = {
  passages: readonly Passage[];
  /** Words to search for: lines without them are left out. */
  wanted: string;
  onWant: (words: string) => void;
  /** Keep the newest line in view. */
  follow: boolean;
  /** Who may listen to the sound that is kept beside words. */
  listener: Listener | undefined;
} & Picks;

/** The exchange, oldest first, with a search. */
export function ExchangeView({ passages: all, wanted, onWant, follow, listener, onPick }: Props) {
  const list = useRef<HTMLOListElement>(null);
  const passages = useMemo(() => matching(all, wanted), [all, wanted]);
  const drawn = useMoreAndMore(passages.length, SCREENFUL);
  const newest = passages.at(-1)?.seq;
  useEffect(() => {
    if (follow && newest !== undefined) list.current?.lastElementChild?.scrollIntoView({ block: 'nearest' });
  }, [follow, newest]);
  if (all.length === 0) return <p class="empty">Nothing has been said yet.</p>;
  return (
    <>
      <input
        class="log-search"
        type="search"
        aria-label="Search the exchange"
        placeholder="Search: words, a reading, #entry"
        value={wanted}
        onInput={(event) => onWant(event.currentTarget.value)}
      />
      <p class="note" role="status">
        {wanted.trim() !== '' && `${passages.length} of ${all.length} lines`}
      </p>
      <ol class="log" ref={list}>
        {passages.slice(0, drawn).map((passage, index) => (
          <Fragment key={passage.seq}>
            {day(passage.at) !== day(passages[index - 1]?.at ?? 0) && (
              <li class="log-day">{day(passage.at)}</li>
            )}
            <TurnView passage={passage} listener={listener} onPick={onPick} />
          </Fragment>
        ))}
      </ol>
    </>
  );
}

function TurnView({ passage, listener, onPick }: { passage: Passage } & Pick<Props, 'listener'> & Picks) {
  const { seq, at, who, tone, fact, person, madeOfIt } = passage;
  return (
    <li class={`log-line by-${who} ${tone}`} id={entryId(seq)} tabIndex={-1}>
      <p class="by">
        <time dateTime={new Date(at).toISOString()}>{clock(at, true)}</time>
        <span class="who">{person ? `${WHO[who]}, ${person}` : WHO[who]}</span>
        {TONE[tone] && tone !== 'fact' && <span class="kind">{TONE[tone]}</span>}
        <span class="seq">#{seq}</span>
      </p>
      <Words item={passage} onPick={onPick} />
      {listener && soundOf(fact) && <Sound listener={listener} seq={seq} words={passage.text} />}
      {fact.type === 'instruction' && <Why instruction={fact} onPick={onPick} />}
      {madeOfIt.map((item) => (
        <div key={item.seq} class={`log-made ${item.tone}`} id={entryId(item.seq)} tabIndex={-1}>
          <span class="kind">{TONE[item.tone] ?? ''}</span>
          <Words item={item} onPick={onPick} />
          <span class="seq">#{item.seq}</span>
        </div>
      ))}
    </li>
  );
}

function Words({ item, onPick }: { item: Item } & Picks) {
  const { amended } = item;
  if (!amended) return <p class="words">{item.text}</p>;
  return (
    <p class="words">
      <s>{item.text}</s>{' '}
      <span class="taken">
        {amended.how} by <EntryLinks seqs={[amended.by]} onPick={onPick} />
      </span>
    </p>
  );
}

function Why({ instruction, onPick }: { instruction: FactOf<'instruction'> } & Picks) {
  const [open, setOpen] = useState(false);
  const { why, advice } = instruction;
  return (
    <div class="log-why">
      <button type="button" class="entry-link" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? 'Hide why' : 'Why'}
      </button>
      <div class={open ? 'reasons' : 'reasons folded'}>
        <p>{why}</p>
        <p class="note">
          Rule {advice.rule}
          {advice.because.length > 0 && ', because of '}
          <EntryLinks seqs={advice.because} onPick={onPick} />
        </p>
      </div>
    </div>
  );
}

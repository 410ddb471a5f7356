import { useMemo, useState } from 'preact/hooks';
import type { HandOverFact } from '../../src/model/hand-over.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { CHANGES_SIGNED, notSentText } from '../../src/phrases/hand-over.ts';
import { NOT_YET_HANDED_OVER } from '../../src/phrases/refusals.ts';
import { leftOutText } from '../../src/phrases/steps.ts';
import type { HandOver } from '../../src/visit/hand-over.ts';
import { DOUBLE_TAP_MS, type Room } from '../seat/use-room.ts';
import { Failure } from '../ui/failure.tsx';
import { Sheet } from '../ui/sheet.tsx';
import { ItemForm } from './item-form.tsx';
import { type Item, itemsOf, nextOpen, withWaiting } from './items.ts';
import './hand-over.css';

/** In the menu of a seat: opens the hand-over, once there is one. */
export function HandOverButton({ room, onOpen }: { room: Room; onOpen: () => void }) {
  if (room.job.setup?.scope !== 'commissioning') return null;
  return (
    <button type="button" class="button" onClick={onOpen}>
      Hand-over and test steps
    </button>
  );
}

/** How the pair is handed over, on a phone: one thing on the screen at a time. */
export function HandOverSheet({ room, onClose }: { room: Room; onClose: () => void }) {
  const { job, link } = room;
  const { setup, handOver } = job;
  const [key, setKey] = useState<string>();
  const [answered, setAnswered] = useState(0);
  const all = useMemo(() => withWaiting(handOver, link.outbox, job.count), [handOver, link.outbox]);
  if (!setup) return null;
  const items = itemsOf(setup, all);
  const open = items.find((item) => item.key === key);
  const refused = link.complaints.findLast(({ letter }) => letter?.t === 'hand-over');
  return (
    <Sheet title="Hand-over" onClose={onClose}>
      {!job.accepted && <p class="failure">{NOT_YET_HANDED_OVER}</p>}
      {job.signed && job.changedBy === undefined && <p class="failure">{CHANGES_SIGNED}</p>}
      <Failure text={refused?.text} />
      {!job.accepted ? null : open ? (
        <OneItem
          key={open.key}
          item={open}
          setup={setup}
          handOver={all}
          reading={job.reading?.reading}
          onWrite={(fact) => {
            // The second tap of a double tap with a glove falls on the next thing, where one tap answers it.
            const byTap = open.kind === 'step' || open.kind === 'sun';
            if (byTap && Date.now() - answered < DOUBLE_TAP_MS) return;
            setAnswered(Date.now());
            room.post({ t: 'hand-over', fact });
            setKey(nextOpen(items, open.key)?.key);
          }}
          onNext={() => setKey(nextOpen(items, open.key)?.key)}
          onList={() => setKey(undefined)}
        />
      ) : (
        <ItemList items={items} sure={itemsOf(setup, handOver)} onPick={setKey} />
      )}
    </Sheet>
  );
}

interface ListProps {
  items: readonly Item[];
  /** The same, as they are in the log. */
  sure: readonly Item[];
  onPick: (key: string) => void;
}

function ItemList({ items, sure, onPick }: ListProps) {
  const first = nextOpen(items, undefined);
  const stands = ({ value }: Item, i: number): string => {
    if (value === '') return 'not written';
    return sure[i]?.value === value ? value : notSentText(value);
  };
  return (
    <>
      {first && (
        <button type="button" class="button main" onClick={() => onPick(first.key)}>
          Fill in, one after another
        </button>
      )}
      <ul class="hand-over-items">
        {items.map((item, i) => (
          <li key={item.key}>
            <button type="button" class="button hand-over-item" onClick={() => onPick(item.key)}>
              <span>{item.name}</span>
              <small>{stands(item, i)}</small>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

interface OneItemProps {
  item: Item;
  setup: JobSetup;
  /** With what waits on this phone. */
  handOver: HandOver;
  reading: NonNullable<Room['job']['reading']>['reading'] | undefined;
  onWrite: (fact: HandOverFact) => void;
  onNext: () => void;
  onList: () => void;
}

function OneItem({ onNext, onList, ...form }: OneItemProps) {
  const { item } = form;
  return (
    <div class="hand-over-one">
      <ItemForm {...form} />
      <button type="button" class="button" onClick={onNext}>
        {leftOutText(item.value !== '', item.kind === 'step')}
      </button>
      <button type="button" class="button" onClick={onList}>
        All of the hand-over
      </button>
    </div>
  );
}

import { useRef, useState } from 'preact/hooks';
import type { CameraState } from '../../src/model/camera.ts';
import {
  BATTERY_LOW,
  BOX_TOO_SMALL,
  DRAW_THE_BOX,
  isItText,
  NOTHING_TOLD,
  OFF_SCALE,
  PROP_IT,
  READER_LOADS,
  READS_NOTHING,
  toldText,
  WATCH_THE_METER,
  WATCHING,
  WHAT_TO_DO,
  WHEN_IT_IS_RIGHT,
} from '../../src/phrases/camera.ts';
import { KEEP_AWAKE } from '../../src/phrases/cautions.ts';
import { type Given, isDue, type Order } from '../../src/sight/answer.ts';
import { shownNumber } from '../../src/sight/characters.ts';
import {
  afterLook,
  type Doubt,
  type Look,
  SURE,
  type Watch,
  type Watched,
  watched,
  watchFrom,
} from '../../src/sight/watch.ts';
import { clock } from '../browser/times.ts';
import type { Room } from '../seat/use-room.ts';
import type { Share } from '../sight/camera.ts';
import { FIRST_BOX } from './box.ts';
import { BoxOnPicture } from './box-on-picture.tsx';
import { useLooks } from './use-looks.ts';
import { useProppedPhone } from './use-propped.ts';
import './watch-meter.css';

/** So many looks in a row must read the same before a person is asked whether it is right. */
const SAME_LOOKS = 4;

const lostAs = (why: Doubt): Exclude<CameraState, 'watching' | 'battery-low' | 'ended'> =>
  why === 'moved' || why === 'dark' ? why : 'unreadable';

/** What the whole page says: a colour and a few words that are seen from afar. */
const stateOf = (seen: Watched) => (seen.kind === 'lost' ? lostAs(seen.why) : seen.kind);

/** The phone propped before the display: a box is drawn, one number confirmed, then it reads by itself in the panel's seat. */
export function WatchMeter({ room, onClose }: { room: Room; onClose: () => void }) {
  const meter = room.job.setup?.meter;
  const [box, setBox] = useState<Share>(FIRST_BOX);
  const [same, setSame] = useState<Look[]>([]);
  const [seen, setSeen] = useState<Watched>();
  const [told, setTold] = useState<{ text: string; at: number }>();
  const watch = useRef<Watch>(undefined);
  const given = useRef<Given>(undefined);
  const { say, lowBattery } = useProppedPhone<Exclude<CameraState, 'battery-low' | 'ended'>>(
    (state) => room.post({ t: 'camera', state }),
    () => watch.current !== undefined,
    'unreadable',
  );
  const { order } = room;
  const asked: Order | undefined =
    order.kind === 'current'
      ? { seq: order.instruction.seq, kind: order.instruction.advice.action.kind }
      : undefined;

  const looks = useLooks(box, (look) => {
    // The picture of a page that nobody sees may stand still.
    if (document.hidden) return;
    if (!watch.current || !meter) {
      setSame((before) =>
        [...(before.at(-1)?.sight.text === look.sight.text ? before : []), look].slice(-SAME_LOOKS),
      );
      return;
    }
    watch.current = afterLook(watch.current, look, meter);
    const now = watched(watch.current, meter);
    setSeen(now);
    if (now.kind === 'lost') say(lostAs(now.why));
    if (now.kind === 'settled') say('watching');
    if (!asked || !isDue(now, asked, given.current, meter)) return;
    given.current = { value: now.value, for: asked.seq };
    setTold({ text: now.text, at: room.now });
    const { frames, belief } = now;
    room.post({ t: 'say', via: 'button', text: now.text, re: asked.seq, camera: { frames, belief } });
  });
  const end = () => {
    if (watch.current) say('ended');
    onClose();
  };

  if (!meter) return null;
  const readable =
    same.length === SAME_LOOKS && same.every(({ sight }) => sight.belief >= SURE)
      ? same[0]?.sight.text
      : undefined;
  const shown = readable === undefined ? undefined : shownNumber(readable);
  const onScale = shown && shown.value >= meter.min && shown.value <= meter.max;
  const confirm = async () => {
    if (!shown) return;
    await looks.learn();
    watch.current = watchFrom({ decimals: shown.decimals });
    setSeen({ kind: 'settling', value: shown.value });
    say('watching');
  };
  const again = () => {
    watch.current = undefined;
    setSame([]);
    setSeen(undefined);
  };
  const stage = seen ? stateOf(seen) : 'box';
  const trouble = stage === 'moved' || stage === 'dark' || stage === 'unreadable' ? stage : undefined;
  const value = seen?.kind === 'settled' ? seen.text : undefined;
  return (
    <main class="watch" data-state={stage}>
      {seen ? (
        <section class="watch-status" aria-live="polite">
          <h1>{WATCHING[stateOf(seen)]}</h1>
          <p class="watch-number">{value ?? '–'}</p>
          {trouble && <p>{WHAT_TO_DO[trouble]}</p>}
          <p>{told ? toldText(told.text, clock(told.at, true)) : NOTHING_TOLD}</p>
        </section>
      ) : (
        <section class="watch-head">
          <h1>{WATCH_THE_METER}</h1>
          <p>{PROP_IT}</p>
          <p>{DRAW_THE_BOX}</p>
        </section>
      )}
      <BoxOnPicture video={looks.video} box={box} {...(!seen && { onBox: setBoxAnew })} />
      {looks.fault && (
        <p class="watch-fault" role="alert">
          {looks.fault}
        </p>
      )}
      {lowBattery && <p class="watch-fault">{BATTERY_LOW}</p>}
      {!('wakeLock' in navigator) && <p>{KEEP_AWAKE}</p>}
      <div class="watch-buttons">
        {!seen && (
          <p class="watch-hint" aria-live="polite">
            {looks.tooSmall
              ? BOX_TOO_SMALL
              : shown
                ? onScale
                  ? WHEN_IT_IS_RIGHT
                  : OFF_SCALE
                : same.length === 0
                  ? READER_LOADS
                  : READS_NOTHING}
          </p>
        )}
        {!seen && shown && onScale && !looks.tooSmall && (
          <button type="button" class="button main" onClick={confirm}>
            {isItText(readable ?? '')}
          </button>
        )}
        {seen && (
          <button type="button" class={trouble ? 'button main' : 'button'} onClick={again}>
            Draw the box again
          </button>
        )}
        <button type="button" class="button" onClick={end}>
          {seen ? 'Stop watching' : 'Back to the panel'}
        </button>
      </div>
    </main>
  );

  function setBoxAnew(next: Share): void {
    setBox(next);
    setSame([]);
  }
}

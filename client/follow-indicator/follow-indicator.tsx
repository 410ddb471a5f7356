import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import type { Heard } from '../../src/indicator/hear.ts';
import type { Moment, Sensing } from '../../src/indicator/watch.ts';
import { SensorSort } from '../../src/model/sensor.ts';
import { BATTERY_LOW, BOX_TOO_SMALL, toldText } from '../../src/phrases/camera.ts';
import { KEEP_AWAKE } from '../../src/phrases/cautions.ts';
import {
  FOLLOW_THE_INDICATOR,
  HOW_TO_TEACH,
  LAMP_BOX,
  LOUDNESS_CHANGED,
  NOTHING_TOLD_YET,
  ONCE_MORE,
  SENSING,
  SENSOR_TROUBLE,
  SORT_KEYS,
  WHICH_INDICATOR,
} from '../../src/phrases/follow-indicator.ts';
import { clock } from '../browser/times.ts';
import type { Room } from '../seat/use-room.ts';
import { FIRST_BOX } from '../watch-meter/box.ts';
import { BoxOnPicture } from '../watch-meter/box-on-picture.tsx';
import '../watch-meter/watch-meter.css';
import { Lessons } from './lessons.tsx';
import { type Following, type Source, useFollowing } from './use-following.ts';
import { useLamp } from './use-lamp.ts';
import { useTone } from './use-tone.ts';
import './follow-indicator.css';

interface Props {
  room: Room;
  onClose: () => void;
}

/** The phone propped at the panel where no number is shown: it is taught a tone or a lamp, and tells what it does. */
export function FollowIndicator({ room, onClose }: Props) {
  const [sort, setSort] = useState<SensorSort>();
  if (sort === 'tone') return <ByTone room={room} onClose={onClose} />;
  if (sort === 'lamp') return <ByLamp room={room} onClose={onClose} />;
  return (
    <main class="watch" data-state="box">
      <section class="watch-head">
        <h1>{FOLLOW_THE_INDICATOR}</h1>
        <p>{WHICH_INDICATOR}</p>
      </section>
      <div class="watch-buttons">
        {SensorSort.options.map((each) => (
          <button key={each} type="button" class="button main" onClick={() => setSort(each)}>
            {SORT_KEYS[each]}
          </button>
        ))}
        <button type="button" class="button" onClick={onClose}>
          Back to the panel
        </button>
      </div>
    </main>
  );
}

function ByTone({ room, onClose }: Props) {
  const source = useRef<Source<Heard>>(undefined);
  const following = useFollowing<Heard>(room, 'tone', () => source.current as Source<Heard>);
  source.current = useTone(following.take);
  const { fault, noLevel } = source.current;
  return (
    <Followed sort="tone" following={following} fault={fault} isReady={fault === undefined} onClose={onClose}>
      {noLevel && <p>{LOUDNESS_CHANGED}</p>}
    </Followed>
  );
}

function ByLamp({ room, onClose }: Props) {
  const [box, setBox] = useState(FIRST_BOX);
  const source = useRef<Source<Moment>>(undefined);
  const following = useFollowing<Moment>(room, 'lamp', () => source.current as Source<Moment>);
  const lamp = useLamp(box, following.take);
  source.current = lamp;
  const isFixed = following.learnt.size > 0 || following.learning !== undefined;
  return (
    <Followed
      sort="lamp"
      following={following}
      fault={lamp.fault}
      isReady={lamp.fault === undefined && !lamp.tooSmall}
      onClose={onClose}
    >
      <BoxOnPicture video={lamp.video} box={box} label={LAMP_BOX} {...(!isFixed && { onBox: setBox })} />
      {lamp.tooSmall && <p class="watch-hint">{BOX_TOO_SMALL}</p>}
    </Followed>
  );
}

interface FollowedProps<M extends Moment> {
  sort: SensorSort;
  following: Following<M>;
  fault: string | undefined;
  isReady: boolean;
  onClose: () => void;
  /** What it sees or hears by. */
  children: ComponentChildren;
}

const stateOf = (sensing: Sensing): keyof typeof SENSING =>
  sensing.kind === 'lost' ? sensing.why : sensing.kind === 'sensed' ? sensing.word : 'settling';

function Followed<M extends Moment>({
  sort,
  following,
  fault,
  isReady,
  onClose,
  children,
}: FollowedProps<M>) {
  const { sensing, told, lowBattery } = following;
  const state = sensing && stateOf(sensing);
  const close = () => {
    following.end();
    onClose();
  };
  return (
    <main class="watch" data-state={sensing ? sensing.kind : 'box'}>
      {sensing && state ? (
        <section class="watch-status" aria-live="polite">
          <h1>{SENSING[state]}</h1>
          {sensing.kind === 'lost' && <p>{SENSOR_TROUBLE[sensing.why]}</p>}
          <p>{told ? toldText(told.text, clock(told.at, true)) : NOTHING_TOLD_YET}</p>
        </section>
      ) : (
        <section class="watch-head">
          <h1>{FOLLOW_THE_INDICATOR}</h1>
          <p>{HOW_TO_TEACH[sort]}</p>
        </section>
      )}
      {children}
      {fault && (
        <p class="watch-fault" role="alert">
          {fault}
        </p>
      )}
      {lowBattery && <p class="watch-fault">{BATTERY_LOW}</p>}
      {!('wakeLock' in navigator) && <p>{KEEP_AWAKE}</p>}
      <div class="watch-buttons">
        {sensing ? (
          <button
            type="button"
            class={sensing.kind === 'lost' ? 'button main' : 'button'}
            onClick={following.again}
          >
            {ONCE_MORE}
          </button>
        ) : (
          <Lessons following={following} isReady={isReady} />
        )}
        <button type="button" class="button" onClick={close}>
          {sensing ? 'Stop watching' : 'Back to the panel'}
        </button>
      </div>
    </main>
  );
}

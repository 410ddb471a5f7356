import { useRef, useState } from 'preact/hooks';
import { isDue, type Told } from '../../src/indicator/answer.ts';
import { type Shown, teach, type Untaught } from '../../src/indicator/profile.ts';
import type { Before } from '../../src/indicator/sense.ts';
import { type Moment, type Sensing, sensed, TELLING, withMoment } from '../../src/indicator/watch.ts';
import { shownIn } from '../../src/indicator/window.ts';
import type { Seq } from '../../src/model/ids.ts';
import type { Profile, SensorSort, SensorState } from '../../src/model/sensor.ts';
import { SENSED_WORDS } from '../../src/phrases/buttons.ts';
import { LESSONS, type Lesson } from '../../src/phrases/follow-indicator.ts';
import { lastLook } from '../../src/visit/last-look.ts';
import { countedOf, waitsForPerson } from '../../src/visit/state.ts';
import type { Room } from '../seat/use-room.ts';
import { useProppedPhone } from '../watch-meter/use-propped.ts';

/** Where moments come from: a microphone or a camera. */
export interface Source<M extends Moment> {
  fault: string | undefined;
  /** How strong it is cannot be followed here. */
  noLevel: boolean;
  /** It is taught from now on. */
  prepare(): void;
  /** It was taught this. */
  keep(taken: Taken<M>, profile: Profile): void;
}

/** What was shown while it was taught. */
export interface Taken<M extends Moment> {
  moments: Record<Lesson, readonly M[]>;
  some: Shown;
  plenty: Shown;
}

/** A lesson lasts so long: a slow beep must fall into it a few times. Milliseconds. */
const LESSON_MS = 6_000;

type Lost = Exclude<SensorState, 'sensing' | 'battery-low' | 'ended'>;

export interface Following<M extends Moment> {
  take(moment: M): void;
  /** Asks for one lesson, after so many seconds. */
  learn(lesson: Lesson, seconds: number): void;
  /** The lesson that waits or is learnt now, and when it begins (`performance.now`). */
  learning: { lesson: Lesson; from: number } | undefined;
  learnt: ReadonlySet<Lesson>;
  /** What came of the lessons; undefined until all are there. */
  profile: Profile | Untaught | 'lost' | undefined;
  begin(): void;
  again(): void;
  end(): void;
  /** Undefined while it is taught. */
  sensing: Sensing | undefined;
  told: { text: string; at: number } | undefined;
  lowBattery: boolean;
}

/** Teaching, and then telling: what a phone does with the moments of a tone or a lamp. */
export function useFollowing<M extends Moment>(
  room: Room,
  sort: SensorSort,
  source: () => Source<M>,
): Following<M> {
  const lessons = useRef<Partial<Record<Lesson, M[]>>>({});
  const recording = useRef<{ lesson: Lesson; from: number; moments: M[] }>(undefined);
  const following = useRef<{ profile: Profile; moments: readonly Moment[] }>(undefined);
  const told = useRef<Told>(undefined);
  const since = useRef<{ seq: Seq; at: number }>(undefined);
  const [, draw] = useState(0);
  const [profile, setProfile] = useState<Following<M>['profile']>();
  const [sensing, setSensing] = useState<Sensing>();
  const [toldNow, setTold] = useState<Following<M>['told']>();
  const drawAgain = () => draw((n) => n + 1);
  const { say, lowBattery } = useProppedPhone<'sensing' | Lost, Profile>(
    (state, taught) => room.post({ t: 'sensor', sort, state, ...(taught && { taught }) }),
    () => following.current !== undefined,
    'unclear',
  );
  const { order, job } = room;
  const asked = order.kind === 'current' && !waitsForPerson(job) ? order.instruction : undefined;
  if (asked && since.current?.seq !== asked.seq) since.current = { seq: asked.seq, at: performance.now() };

  const take = (moment: M) => {
    const { current } = recording;
    if (current) return record(current, moment);
    const now = following.current;
    // The page of a phone that nobody sees may stand still.
    if (!now || document.hidden) return;
    const moments = withMoment(now.moments, moment);
    following.current = { ...now, moments };
    const base = baseOf(room);
    const from = asked ? (since.current?.at ?? moment.at) : moment.at;
    const seen = sensed(moments, from, now.profile, base?.before);
    setSensing(seen);
    if (seen.kind === 'lost') say(seen.why);
    if (seen.kind === 'sensed') say('sensing');
    if (!asked || !isDue(seen, asked, told.current, moment.at)) return;
    told.current = { for: asked.seq, at: moment.at, word: seen.word };
    const text = SENSED_WORDS[seen.word];
    setTold({ text, at: room.now });
    const look = { sort, moments: seen.moments, ...(seen.place !== undefined && { place: seen.place }) };
    const sensor = { ...look, ...(base && { against: base.against }) };
    room.post({ t: 'say', via: 'button', text, re: asked.seq, sensor });
  };

  const record = ({ lesson, from, moments }: NonNullable<typeof recording.current>, moment: M) => {
    if (moment.at < from) return;
    moments.push(moment);
    if (moment.at < from + LESSON_MS) return;
    recording.current = undefined;
    const clear = moments.filter(({ doubt }) => doubt === undefined);
    if (clear.length < TELLING * moments.length) {
      setProfile('lost');
      return;
    }
    lessons.current[lesson] = clear;
    setProfile(LESSONS.every((each) => lessons.current[each]) ? taught() : undefined);
    drawAgain();
  };

  const shown = (lesson: Lesson): Shown => {
    const { level, ...rest } = shownIn(lessons.current[lesson] ?? []);
    return level && !source().noLevel ? { level, ...rest } : rest;
  };
  const taught = (): Profile | Untaught => teach(shown('none'), shown('some'), shown('plenty'));

  const learn = (lesson: Lesson, seconds: number) => {
    if (Object.keys(lessons.current).length === 0) source().prepare();
    setProfile(undefined);
    delete lessons.current[lesson];
    recording.current = { lesson, from: performance.now() + 1_000 * seconds, moments: [] };
    drawAgain();
  };
  const begin = () => {
    const { none = [], some = [], plenty = [] } = lessons.current;
    if (typeof profile !== 'object') return;
    source().keep({ moments: { none, some, plenty }, some: shown('some'), plenty: shown('plenty') }, profile);
    following.current = { profile, moments: [] };
    say('sensing', profile);
    setSensing({ kind: 'settling' });
  };
  const stop = () => {
    if (following.current) say('ended');
    following.current = undefined;
    recording.current = undefined;
  };
  return {
    take,
    learn,
    learning: recording.current,
    learnt: new Set(LESSONS.filter((lesson) => lessons.current[lesson])),
    profile,
    begin,
    again() {
      stop();
      lessons.current = {};
      setProfile(undefined);
      setSensing(undefined);
    },
    end: stop,
    sensing,
    told: toldNow,
    lowBattery,
  };
}

/** The last word that counts, if this phone told it by what it is taught now: what the next is held against. */
function baseOf({ job, link }: Room): { against: Seq; before: Before } | undefined {
  const last = lastLook(countedOf(job));
  if (last?.from === undefined || job.taughtAt === undefined || last.from < job.taughtAt) return undefined;
  const said = link.entries[last.from]?.fact;
  const place = said?.type === 'said' ? said.sensor?.place : undefined;
  const before = last.seen === 'light' ? place : last.seen;
  return before === undefined ? undefined : { against: last.from, before };
}

import type { PerAxis } from '../../src/engine/sample.ts';
import type { MeterProfile } from '../../src/model/profile.ts';
import { AXES, type Axis } from '../../src/model/turns.ts';
import { DECIBELS, Job } from './crew-of-two.ts';
import { at } from './given.ts';

/** An alignment on an exact Gaussian beam, and how it was read. Eighths and dB. */
interface Course {
  /** The place that is to be accepted, from where the eye aimed. */
  readonly place: PerAxis<number>;
  /** Where the beam peaks, from that place. */
  readonly peak: PerAxis<number>;
  readonly half: number;
  readonly top: number;
  /** Where the sides of each adjuster's peak were read, and how far off a place next to it. */
  readonly below: number;
  readonly above: number;
  readonly close: PerAxis<number>;
}

const COURSE: Course = {
  place: at(0),
  peak: at(0),
  half: 8,
  top: -4.5,
  below: -8,
  above: 8,
  close: at(3, 3),
};

/** So fine that what is less than 0.3 dB higher is not lost in noise. */
const METER: MeterProfile = { ...DECIBELS, tolerance: 0.1 };

/** What acceptance asks for, done step by step on the decibel meter. */
export class Proof extends Job {
  readonly course: Course;

  constructor(course: Partial<Course> = {}) {
    super(METER);
    this.course = { ...COURSE, ...course };
  }

  /** The exact level where the screws stand. */
  get level(): number {
    const { place, peak, half, top } = this.course;
    const drop = (axis: Axis) => 3 * ((this.search.turned[axis] - place[axis] - peak[axis]) / half) ** 2;
    return top - drop('horizontal') - drop('vertical');
  }

  /** Stands that far from the place on one adjuster, and reads. */
  reaches(axis: Axis, to: number): void {
    this.turns(axis, this.course.place[axis] + to - this.search.turned[axis]);
    this.reads(this.level);
  }

  /** Both sides of both peaks and back. */
  brackets(): this {
    const { below, above, close } = this.course;
    for (const axis of AXES) this.reaches(axis, 0);
    for (const axis of AXES) for (const to of [close[axis], above, below, 0]) this.reaches(axis, to);
    return this;
  }

  blocks(): this {
    this.say({ type: 'path', state: 'blocked' });
    this.reads('nothing');
    this.say({ type: 'path', state: 'clear' });
    return this;
  }

  holds(ms = this.meter.holdMs): this {
    this.reads(this.level);
    this.reads(this.level, ms);
    return this;
  }
}

/** All of it: accepted as soon as it is said. */
export const proven = (course: Partial<Course> = {}): Proof => new Proof(course).brackets().blocks().holds();

/** The job's time: what entries are stamped with and instructions expire by. */
export interface Clock {
  /** Milliseconds since 1970-01-01 UTC. */
  now(): number;
  /** Runs `action` once, after `ms` of this clock's time; returns how to call it off. */
  after(ms: number, action: () => void): () => void;
}

/** `setTimeout` fires at once beyond this. */
const LONGEST_TIMER_MS = 2 ** 31 - 1;

export const systemClock: Clock = {
  now: () => Date.now(),
  after(ms, action) {
    const timer = setTimeout(action, Math.min(ms, LONGEST_TIMER_MS));
    return () => clearTimeout(timer);
  },
};

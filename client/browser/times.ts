import { type Times, timesIn } from '../../src/phrases/times.ts';

export { duration } from '../../src/phrases/times.ts';

/** The reader's time zone. */
export const ownZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;

let made: Times | undefined;

/** Made when a time is first shown: the first formatter keeps a slow phone busy for a tenth of a second. */
function own(): Times {
  made ??= timesIn(ownZone());
  return made;
}

/** Times as this reader's clock shows them. */
export const OWN_TIMES: Times = {
  clock: (at, seconds) => own().clock(at, seconds),
  day: (at) => own().day(at),
  moment: (at) => own().moment(at),
  labels: (marks) => own().labels(marks),
  zone: (at) => own().zone(at),
};

export const { clock, day, moment, zone: timeZone } = OWN_TIMES;

import { timesIn } from '../../src/phrases/times.ts';

export { duration } from '../../src/phrases/times.ts';

/** The reader's time zone. */
export const ZONE = Intl.DateTimeFormat().resolvedOptions().timeZone;

/** Times as this reader's clock shows them. */
export const OWN_TIMES = timesIn(ZONE);

export const { clock, day, moment, zone: timeZone, labels: clockLabels } = OWN_TIMES;

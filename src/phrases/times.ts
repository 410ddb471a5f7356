/** How moments are written. */
export interface Times {
  /** "09:31" or "09:31:07". */
  clock(at: number, seconds: boolean): string;
  /** "3 March 2026" */
  day(at: number): string;
  /** "3 March 2026, 09:31" */
  moment(at: number): string;
  /** Marks on a time axis, each as short as is clear. */
  labels(marks: readonly number[]): string[];
  /** "UTC+01:00", at that time. Without it a printed time means nothing. */
  zone(at: number): string;
}

const two = '2-digit';
const FORMATS = {
  hours: { hour: two, minute: two },
  seconds: { hour: two, minute: two, second: two },
  dated: { day: 'numeric', month: 'short', hour: two, minute: two },
  days: { dateStyle: 'long' },
  offsets: { timeZoneName: 'longOffset' },
} as const satisfies Record<string, Intl.DateTimeFormatOptions>;

const DAY_MS = 24 * 3_600_000;

/** Moments as written in a time zone (IANA name, such as "Europe/London"). @throws {RangeError} on another name */
export function timesIn(zone: string): Times {
  const made: Record<string, Intl.DateTimeFormat> = {};
  // Making one takes a browser milliseconds, so each is made when it is first needed.
  const format = (name: keyof typeof FORMATS): Intl.DateTimeFormat => {
    made[name] ??= new Intl.DateTimeFormat('en-GB', { timeZone: zone, hourCycle: 'h23', ...FORMATS[name] });
    return made[name];
  };
  // An unknown zone must fail here, not when the first time is written.
  format('hours');
  const clock = (at: number, fine: boolean) => format(fine ? 'seconds' : 'hours').format(at);
  const day = (at: number) => format('days').format(at);
  return {
    clock,
    day,
    moment: (at) => `${day(at)}, ${clock(at, false)}`,
    labels(marks) {
      const [first = 0, second = Number.POSITIVE_INFINITY] = marks;
      if ((marks.at(-1) ?? first) - first >= DAY_MS) return marks.map((at) => format('dated').format(at));
      return marks.map((at) => clock(at, second - first < 60_000));
    },
    zone(at) {
      const name = format('offsets')
        .formatToParts(at)
        .find(({ type }) => type === 'timeZoneName')?.value;
      return (name ?? 'GMT').replace('+00:00', '').replace('GMT', 'UTC').replace('-', '−');
    },
  };
}

/** "14 min 05 s", "1 h 02 min". */
export function duration(ms: number): string {
  const seconds = Math.round(ms / 1000);
  const minutes = Math.floor(seconds / 60);
  const two = (n: number): string => String(n).padStart(2, '0');
  if (minutes >= 60) return `${Math.floor(minutes / 60)} h ${two(minutes % 60)} min`;
  return minutes > 0 ? `${minutes} min ${two(seconds % 60)} s` : `${seconds} s`;
}

/** How moments are written. */
export interface Times {
  /** "09:31" or "09:31:07". */
  clock(at: number, seconds: boolean): string;
  /** "3 March 2026" */
  day(at: number): string;
  /** Marks on a time axis, each as short as is clear. */
  labels(marks: readonly number[]): string[];
  /** "UTC+01:00", at that time. Without it a printed time says nothing. */
  zone(at: number): string;
}

const DAY_MS = 24 * 3_600_000;

/** Moments as written in a time zone (IANA name, such as "Europe/London"). @throws {RangeError} on another name */
export function timesIn(zone: string): Times {
  const format = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat('en-GB', { timeZone: zone, hourCycle: 'h23', ...options });
  const two = '2-digit';
  const hours = format({ hour: two, minute: two });
  const seconds = format({ hour: two, minute: two, second: two });
  const dated = format({ day: 'numeric', month: 'short', hour: two, minute: two });
  const days = format({ dateStyle: 'long' });
  const offsets = format({ timeZoneName: 'longOffset' });
  const clock = (at: number, fine: boolean) => (fine ? seconds : hours).format(at);
  return {
    clock,
    day: (at) => days.format(at),
    labels(marks) {
      const [first = 0, second = Number.POSITIVE_INFINITY] = marks;
      if ((marks.at(-1) ?? first) - first >= DAY_MS) return marks.map((at) => dated.format(at));
      return marks.map((at) => clock(at, second - first < 60_000));
    },
    zone(at) {
      const name = offsets.formatToParts(at).find(({ type }) => type === 'timeZoneName')?.value;
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

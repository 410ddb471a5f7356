const HOURS = new Intl.DateTimeFormat(undefined, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
const SECONDS = new Intl.DateTimeFormat(undefined, {
  hour: '2-digit',
  minute: '2-digit',
  second: '2-digit',
  hourCycle: 'h23',
});
const DAY = new Intl.DateTimeFormat(undefined, { dateStyle: 'long' });

/** "09:31" or "09:31:07", in the reader's time zone. */
export const clock = (at: number, seconds: boolean): string => (seconds ? SECONDS : HOURS).format(at);

/** "3 Mar 09:31": for spans longer than a day. */
const DATED = new Intl.DateTimeFormat(undefined, {
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
  hourCycle: 'h23',
});

/** The labels of marks on a time axis, each as short as is clear. */
export function clockLabels(marks: readonly number[]): string[] {
  const [first = 0, second = Number.POSITIVE_INFINITY] = marks;
  const span = (marks.at(-1) ?? first) - first;
  if (span >= 24 * 3_600_000) return marks.map((at) => DATED.format(at));
  return marks.map((at) => clock(at, second - first < 60_000));
}

export const day = (at: number): string => DAY.format(at);

/** "UTC+01:00": the reader's time zone at that time. Without it a printed time says nothing. */
export function timeZone(at: number): string {
  const ahead = -new Date(at).getTimezoneOffset();
  const two = (n: number): string => String(Math.floor(n)).padStart(2, '0');
  const size = Math.abs(ahead);
  return ahead === 0 ? 'UTC' : `UTC${ahead > 0 ? '+' : '−'}${two(size / 60)}:${two(size % 60)}`;
}

/** "14 min 05 s", "1 h 02 min". */
export function duration(ms: number): string {
  const seconds = Math.round(ms / 1000);
  const minutes = Math.floor(seconds / 60);
  const two = (n: number): string => String(n).padStart(2, '0');
  if (minutes >= 60) return `${Math.floor(minutes / 60)} h ${two(minutes % 60)} min`;
  return minutes > 0 ? `${minutes} min ${two(seconds % 60)} s` : `${seconds} s`;
}

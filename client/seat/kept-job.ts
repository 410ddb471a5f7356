import { useEffect, useRef, useState } from 'preact/hooks';
import type { Entry } from '../../src/model/entry.ts';
import { forgetEntries, keepEntries, readKept } from '../browser/kept-log.ts';
import { browserStorage } from '../browser/storage.ts';
import { trustworthy } from '../link/known.ts';
import type { Link } from '../link/link.ts';
import { forgetLeftJobs, keptName, type SavedSeat } from '../saved/saved-seats.ts';

/** Its code is for later, too. Without a line there is nothing to keep: a later opening does it. */
const keepHearing = (): Promise<void> =>
  import('../on-device/keep-files.ts').then(
    (files) => files.keepHearing(),
    () => undefined,
  );

/** A job as this phone last saw it. */
export interface KeptJob {
  entries: readonly Entry[];
  /** When this phone last heard from the server, by its own clock, ms. */
  lastLinked: number | undefined;
}

const linkedKey = (saved: SavedSeat): string => `linked.${keptName(saved)}`;

/** Undefined while it is being read. */
export function useKeptJob(saved: SavedSeat): KeptJob | undefined {
  const [kept, setKept] = useState<KeptJob>();
  useEffect(() => {
    void forgetLeftJobs(browserStorage);
    const at = browserStorage.read(linkedKey(saved));
    readKept(keptName(saved)).then((found) => {
      const entries = trustworthy(found);
      // Otherwise the end of another log could stay behind the one that comes now.
      if (entries.length < found.length) void forgetEntries(keptName(saved));
      setKept({ entries, lastLinked: typeof at === 'number' ? at : undefined });
    });
  }, []);
  return kept;
}

/** So that the next load begins with what the server has. */
export async function forgetKept(saved: SavedSeat): Promise<void> {
  browserStorage.remove(linkedKey(saved));
  await forgetEntries(keptName(saved));
}

const STAMP_EVERY_MS = 5_000;
/** The first minutes at a seat belong to the job: what may be needed later is fetched after them. */
const HEARING_AFTER_MS = 20_000;

/** Keeps what comes, for a reload without a link. Returns when this phone was last linked. `keeps`: false in practice. */
export function useKeeping(
  saved: SavedSeat,
  kept: KeptJob,
  { entries, phase }: Link,
  keeps: boolean,
): number | undefined {
  const [lastLinked, setLastLinked] = useState(kept.lastLinked);
  const upTo = useRef(kept.entries.length);
  useEffect(() => {
    if (keeps) void keepEntries(keptName(saved), entries.slice(upTo.current));
    upTo.current = entries.length;
  }, [entries]);
  const live = keeps && phase === 'live';
  useEffect(() => {
    if (!live) return;
    const stamp = () => {
      browserStorage.write(linkedKey(saved), Date.now());
      setLastLinked(Date.now());
    };
    stamp();
    const stamping = setInterval(stamp, STAMP_EVERY_MS);
    const hearing = setTimeout(() => void keepHearing(), HEARING_AFTER_MS);
    return () => {
      clearInterval(stamping);
      clearTimeout(hearing);
      stamp();
    };
  }, [live]);
  return lastLinked;
}

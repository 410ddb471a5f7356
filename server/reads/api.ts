import { Hono } from 'hono';
import type { JobId } from '../../src/model/ids.ts';
import { TOO_MUCH_TO_READ } from '../../src/phrases/limits.ts';
import { READS_NEED_ACCOUNTS } from '../../src/phrases/reads.ts';
import type { ReadLine, Reads } from '../../src/protocol/reads.ts';
import { ROUTES } from '../../src/protocol/routes.ts';
import { blockOf } from '../guard/guesses.ts';
import type { HeavyWork } from '../guard/turns.ts';
import type { Entrance } from '../http/entrance.ts';
import { addressOf, type Env, readQuery, refuse } from '../http/http.ts';
import { answer } from '../http/route.ts';
import { placeOf } from '../record/place.ts';
import type { KeptRead } from '../store/reads.ts';
import type { Store } from '../store/store.ts';

interface ReadsApiDeps {
  readonly entrance: Entrance;
  readonly store: Store;
  readonly heavy: HeavyWork;
}

const A_PAGE = 100;

/** Who read what, for administrators. */
export function readsApi({ entrance, store, heavy }: ReadsApiDeps): Hono<Env> {
  const app = new Hono<Env>();
  answer(app, ROUTES.reads, async (c) => {
    if (entrance.kind !== 'accounts') return refuse(c, 'not-now', READS_NEED_ACCOUNTS);
    const locked = entrance.refusal(c, 'reads');
    if (locked) return locked;
    const wanted = await readQuery(c, ROUTES.reads.query);
    if (wanted.kind === 'refused') return refuse(c, wanted.reason, wanted.text);
    const { before, log } = wanted.value;
    const asker = { key: entrance.visitor(c)?.account.id ?? '', place: blockOf(addressOf(c)) };
    const looking = heavy.boards.take(asker, async () => {
      const found = await store.readsBefore(Number(before ?? Number.MAX_SAFE_INTEGER), A_PAGE + 1, log);
      const page = found.slice(0, A_PAGE);
      const places = await placesOf(store, new Set(page.map((read) => read.log)));
      const reads = page.map((read) => lineOf(read, places.get(read.log)));
      return c.json({ reads, more: found.length > A_PAGE } satisfies Reads);
    });
    return looking ?? refuse(c, 'too-fast', TOO_MUCH_TO_READ);
  });
  return app;
}

type Place = ReturnType<typeof placeOf>;

/** What each log is of. */
async function placesOf(store: Store, logs: ReadonlySet<JobId | ''>): Promise<Map<JobId | '', Place>> {
  const places = new Map<JobId | '', Place>();
  for (const log of logs) if (log !== '') places.set(log, placeOf((await store.read(log, -1, 1))[0]));
  return places;
}

const lineOf = (
  { number, hour, what, reader, name, role, key, log }: KeptRead,
  of: Place = {},
): ReadLine => ({
  ...{ number, hour, what, reader },
  ...(name !== '' && { name }),
  ...(role !== '' && { role }),
  ...(key !== '' && { key }),
  ...(log !== '' && { log }),
  ...of,
});

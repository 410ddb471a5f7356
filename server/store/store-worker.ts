import { parentPort, workerData } from 'node:worker_threads';
import { openDataFolder } from './data-folder.ts';
import type { SqliteStore, Write, Written } from './sqlite.ts';
import { StoreFailure } from './store.ts';

/** What does not write, or cannot be stored together with others. */
export type Asked = Exclude<
  {
    [M in keyof SqliteStore]: SqliteStore[M] extends (...args: never[]) => Promise<unknown> ? M : never;
  }[keyof SqliteStore],
  'append' | 'keepSummary' | 'addSignedHeads' | 'addStamp' | 'changeReads'
>;

interface Asking {
  readonly id: number;
  readonly ask: Asked;
  readonly args: readonly unknown[];
}

export type Call = Asking | { readonly id: number; readonly write: Write };

export type Answer = { readonly id: number } & (
  | { readonly value: unknown }
  /** `ofStore`: the message is for the person who runs the server. */
  | { readonly failed: string; readonly ofStore: boolean }
);

export type FromStore = { opened: true } | { cannot: string } | { warn: string } | { answers: Answer[] };

/** The database in a thread of its own. What came while it waited for the disk is stored with one wait more. */
function serve(): void {
  const port = parentPort;
  if (!port) throw new Error('this program is a thread of the server');
  const say = (message: FromStore): void => port.postMessage(message);
  let store: SqliteStore;
  try {
    store = openDataFolder(workerData, undefined, (warn) => say({ warn }));
  } catch (error) {
    if (!(error instanceof StoreFailure)) throw error;
    say({ cannot: error.message });
    return;
  }
  let came: Call[] = [];
  let due = false;

  /**
   * Questions first: they are quick, and none of them may count on a write that nobody was told is stored. The end comes
   * last.
   */
  const work = (): void => {
    due = false;
    const calls = came;
    came = [];
    const asks = calls.filter((call) => 'ask' in call);
    const put = async (call: Asking): Promise<void> => say({ answers: [await answer(store, call)] });
    for (const call of asks) if (call.ask !== 'close') void put(call);
    const writes = calls.filter((call) => 'write' in call);
    if (writes.length > 0) {
      const written = store.writeAll(writes.map(({ write }) => write));
      say({ answers: writes.map(({ id }, i) => answerOf(id, written[i] as Written)) });
    }
    for (const call of asks) if (call.ask === 'close') void put(call).then(() => port.close());
  };
  port.on('message', (calls: Call[]) => {
    came.push(...calls);
    if (!due) setImmediate(work);
    due = true;
  });
  say({ opened: true });
}

async function answer(store: SqliteStore, { id, ask, args }: Asking): Promise<Answer> {
  try {
    const value: unknown = await Reflect.apply(store[ask], store, args);
    return { id, value };
  } catch (error) {
    return answerOf(id, { error });
  }
}

function answerOf(id: number, written: { readonly value: unknown } | { readonly error: unknown }): Answer {
  if ('value' in written) return { id, value: written.value };
  const { error } = written;
  return {
    id,
    failed: error instanceof Error ? error.message : String(error),
    ofStore: error instanceof StoreFailure,
  };
}

serve();

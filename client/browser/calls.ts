/** A worker of this page that answers questions, each with an id of its own. */

export type Asked<Question> = Question & { id: number };
export type Answered = { id: number; value: unknown } | { id: number; failed: string };

interface Waiting {
  resolve(value: unknown): void;
  reject(error: Error): void;
}

/** Asks the worker; rejects when it fails at it, or at all. The caller knows what is answered to which question. */
export function callsTo<Question extends object>(
  worker: Worker,
): <T>(question: Question, transfer?: Transferable[]) => Promise<T> {
  const waiting = new Map<number, Waiting>();
  let lastId = 0;
  worker.onmessage = ({ data }: MessageEvent<Answered>) => {
    const one = waiting.get(data.id);
    waiting.delete(data.id);
    if ('failed' in data) one?.reject(new Error(data.failed));
    else one?.resolve(data.value);
  };
  worker.onerror = (event) => {
    for (const one of waiting.values()) one.reject(new Error(event.message));
    waiting.clear();
  };
  return <T>(question: Question, transfer: Transferable[] = []) =>
    new Promise<unknown>((resolve, reject) => {
      const id = ++lastId;
      waiting.set(id, { resolve, reject });
      worker.postMessage({ ...question, id }, transfer);
    }) as Promise<T>;
}

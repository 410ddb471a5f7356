import type { KeptRead } from './reads.ts';
import type { KeptStamp, LoggedHead, Store } from './store.ts';

const AT_A_TIME = 5_000;

/** All lines of who read what, the oldest first. */
export async function* allReads(store: Store): AsyncGenerator<KeptRead[]> {
  for (let after = 0; ; ) {
    const reads = await store.readsAfter(after, AT_A_TIME);
    const last = reads.at(-1);
    if (!last) return;
    yield reads;
    after = last.number;
  }
}

/** All signed heads, in the order of their tree. */
export async function* allSignedHeads(store: Store): AsyncGenerator<LoggedHead[]> {
  for (let after = 0; ; after += AT_A_TIME) {
    const heads = await store.signedHeads(after, AT_A_TIME);
    if (heads.length > 0) yield heads;
    if (heads.length < AT_A_TIME) return;
  }
}

/** All time stamps over trees larger than this, the oldest first. */
export async function* allStamps(store: Store, above = 0): AsyncGenerator<KeptStamp[]> {
  for (let size = above; ; ) {
    const stamp = await store.stampOver(size);
    if (!stamp) return;
    yield [stamp];
    size = stamp.size;
  }
}

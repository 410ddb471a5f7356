import type { KeptRead } from '../store/reads.ts';
import type { KeptStamp, LoggedHead, Store } from '../store/store.ts';

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

/** All time stamps, the oldest first. */
export async function* allStamps(store: Store): AsyncGenerator<KeptStamp[]> {
  for (let size = 0; ; ) {
    const stamp = await store.stampOver(size);
    if (!stamp) return;
    yield [stamp];
    size = stamp.size;
  }
}

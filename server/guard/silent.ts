import { blockOf } from './guesses.ts';

/** As a `Socket` of node:net has it. */
interface Caller {
  readonly remoteAddress?: string | undefined;
  readonly bytesRead: number;
  readonly destroyed: boolean;
}

/** Connections on which nothing has come yet, counted for each block of addresses. */
export class SilentCallers {
  private readonly silent = new Set<Caller>();

  /** `most`: of one block. */
  constructor(private readonly most: number) {}

  /** Whether this one may stay. */
  admits(caller: Caller): boolean {
    const block = blockOf(caller.remoteAddress ?? '');
    let others = 0;
    for (const one of this.silent) {
      if (one.destroyed || one.bytesRead > 0) this.silent.delete(one);
      else if (blockOf(one.remoteAddress ?? '') === block) others += 1;
    }
    if (others >= this.most) return false;
    this.silent.add(caller);
    return true;
  }
}

import type { Input, Response } from '../conversation/input.ts';
import { respond } from '../conversation/respond.ts';
import { emptyHead, hashOf } from '../log/chain.ts';
import { sealAll } from '../log/seal-all.ts';
import type { Draft, Entry } from '../model/entry.ts';
import type { Seat } from '../model/facts.ts';
import { SALT_BYTES } from '../model/forgotten.ts';
import type { Head, JobId, MessageId } from '../model/ids.ts';
import { EMPTY, fold, type JobState } from '../visit/state.ts';

/** A job without a server: each input is answered and sealed into its log, on a clock that is set by hand. */
export class LoggedJob {
  readonly entries: Entry[] = [];
  state: JobState = EMPTY;
  head: Head;
  private wakeAt: number | undefined;

  constructor(
    job: JobId,
    /** ms since 1970. */
    public now: number,
  ) {
    this.head = emptyHead(job);
  }

  /** Throws where the job refuses. */
  input(input: Input): void {
    const response = this.take(input);
    if (response.kind === 'refused') throw new Error(`${response.reason}: ${response.text}`);
  }

  /** `ref`: the message that the input came in; its first entry carries it. */
  take(input: Input, ref?: MessageId): Response {
    const response = respond(this.state, input, this.now);
    if (response.kind === 'refused') return response;
    this.seal(response.drafts, ref);
    this.state = response.state;
    this.wakeAt = response.wakeAt;
    return response;
  }

  /** Seals an entry that no input leads to, such as one of an older program. */
  write(draft: Draft): void {
    this.state = this.seal([draft]).reduce<JobState>(fold, this.state);
  }

  private seal(drafts: readonly Draft[], ref?: MessageId): Entry[] {
    // Nobody real is in it, so its salts need not be secret, and the same job gives the same log.
    const salt = ({ job, count }: Head) => hashOf(`${job} ${count}`).slice(0, 2 * SALT_BYTES);
    const { entries, head } = sealAll(this.head, drafts, this.now, { ref, salt });
    this.entries.push(...entries);
    this.head = head;
    return entries;
  }

  say(seat: Seat, text: string): void {
    const re = this.state.instruction?.seq;
    this.input({ kind: 'words', seat, via: 'typed', text, ...(re !== undefined && { re }) });
  }

  /** Lets time pass, waking the job as a server would. Milliseconds. */
  wait(ms: number): void {
    const end = this.now + ms;
    while (this.wakeAt !== undefined && this.wakeAt <= end) {
      this.now = Math.max(this.now, this.wakeAt);
      this.input({ kind: 'tick' });
    }
    this.now = end;
  }
}

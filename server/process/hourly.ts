import { setTimeout } from 'node:timers/promises';

const HOUR_MS = 60 * 60_000;

/** Work that is done at once and then each hour, until it is closed. */
export abstract class Hourly {
  private readonly closing = new AbortController();

  /** Never rejects. */
  async begin(): Promise<void> {
    const { signal } = this.closing;
    while (!signal.aborted) {
      await this.round(signal).catch((err: unknown) => {
        if (!signal.aborted) this.failed(err);
      });
      await setTimeout(HOUR_MS, undefined, { signal, ref: false }).catch(() => {});
    }
  }

  close(): void {
    this.closing.abort();
  }

  /** One time. It may reject, and ends early when it is asked to. */
  protected abstract round(signal: AbortSignal): Promise<void>;

  /** A round rejected; the next one comes in an hour. */
  protected abstract failed(err: unknown): void;
}

/** What became of one of several that were done together. */
export type Outcome<R> = { readonly value: R } | { readonly error: unknown };

/**
 * Gathers what comes while the last batch is under way, so that many wait for the disk together: nobody waits for a clock, and
 * who is alone waits for their own only.
 */
export class Batches<W, R> {
  private waiting: { work: W; settle: (outcome: Outcome<R>) => void }[] = [];
  private running: Promise<void> | undefined;

  /** `most`: in one batch. `run` must not reject. */
  constructor(
    private readonly run: (batch: readonly W[]) => Promise<readonly Outcome<R>[]>,
    private readonly most: number,
  ) {}

  add(work: W): Promise<R> {
    return new Promise((resolve, reject) => {
      const settle = (outcome: Outcome<R>) =>
        'value' in outcome ? resolve(outcome.value) : reject(outcome.error);
      this.waiting.push({ work, settle });
      this.running ??= this.runAll();
    });
  }

  /** Resolves when all that was added is done. */
  async done(): Promise<void> {
    while (this.running) await this.running;
  }

  private async runAll(): Promise<void> {
    // What comes in the same turn goes together.
    await new Promise<void>((turn) => setImmediate(turn));
    while (this.waiting.length > 0) {
      const batch = this.waiting.splice(0, this.most);
      const outcomes = await this.run(batch.map(({ work }) => work));
      batch.forEach(({ settle }, i) => {
        settle(outcomes[i] as Outcome<R>);
      });
    }
    this.running = undefined;
  }
}

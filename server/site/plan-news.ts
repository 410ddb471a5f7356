import type { Logger } from 'pino';
import type { PairId } from '../../src/model/pair-plan.ts';
import type { Rooms } from '../jobs/rooms.ts';
import type { Summaries } from '../record/summaries.ts';
import type { Site } from './site.ts';

/** Tells the crews of open visits that the desk has changed the plan of their pair. */
export class PlanNews {
  constructor(
    private readonly rooms: Rooms,
    private readonly summaries: Summaries,
    private readonly log: Logger,
  ) {}

  /** Never rejects: the change is saved, and is a finding of the site, whether the crew could be told or not. */
  async tell(site: Site, pairs: readonly PairId[]): Promise<void> {
    for (const id of pairs) {
      const pair = site.state.pairs.get(id);
      const job = pair?.visits.at(-1)?.job;
      if (!pair || job === undefined) continue;
      try {
        if (await this.isSigned(job)) continue;
        const room = await this.rooms.get(job);
        await room?.submit({ kind: 'plan-changed', plan: pair.plan });
      } catch (error) {
        this.log.error({ job, err: error }, 'a crew could not be told that its plan was changed');
      }
    }
  }

  /** A signed visit is over; its log need not be read. */
  private async isSigned(job: string): Promise<boolean> {
    const result = await this.summaries.of(job);
    return result?.kind === 'summary' && ['signed', 'signed-not-proven'].includes(result.summary.status);
  }
}

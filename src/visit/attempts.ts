import type { Seq } from '../model/ids.ts';
import type { Placed } from '../model/placed.ts';
import type { Reading } from '../model/reading.ts';
import type { PanelIndication } from '../model/reports.ts';
import { type ClearReading, clearReadings } from './beam.ts';
import type { Commission } from './commission.ts';
import { type Covering, sideOf } from './cover.ts';

/**
 * The proving tests, in their order: a loss clearly below the alarm threshold must not alarm, one clearly above
 * it must, and all of the light lost at once must fault.
 */
export const PROOFS = ['quiet', 'alarm', 'fault'] as const;
export type Proof = (typeof PROOFS)[number];

/** One go at a proving test, from "covered" to the panel back at normal, as far as it got. */
export interface Attempt extends Covering {
  readonly proof: Proof;
  /** The acceptance it was made under, and what was accepted. */
  readonly accept: Seq;
  readonly accepted: Reading;
  /** The last settled reading before the cover, and the first after it, both with the path clear. */
  readonly before?: ClearReading;
  readonly after?: ClearReading;
  /** Another cover went on, or something was turned or looked into: no reading is after it any more. */
  readonly closed?: true;
  /** The first thing other than normal that the panel showed while it was covered. */
  readonly shown?: Placed<'panel'>;
  /** The first of the other kind, before the panel was back at normal: alarm and fault in one test. */
  readonly also?: Placed<'panel'>;
  readonly cleared?: Placed<'path'>;
  readonly restored?: Placed<'panel'>;
}

/** Every go at a proving test since the first acceptance, oldest first; covering before it proves nothing. */
export function attemptsOf(commission: Pick<Commission, 'counted' | 'setup'>): Attempt[] {
  const { counted, setup } = commission;
  const clear = clearReadings(commission);
  const attempts: Attempt[] = [];
  let accept: Placed<'accept'> | undefined;
  let open: Attempt | undefined;
  /** Since when the path has been clear under the acceptance: a cover put on another does not end that. */
  let clearSince: Seq = 0;
  const amend = (change: Partial<Attempt>): void => {
    if (!open) return;
    open = { ...open, ...change };
    attempts[attempts.length - 1] = open;
  };
  const close = (): void => {
    if (open?.cleared && !open.after) amend({ closed: true });
  };
  for (const fact of counted) {
    switch (fact.type) {
      case 'accept':
        close();
        accept = fact;
        clearSince = fact.seq;
        open = undefined;
        break;
      case 'move':
      case 'gain':
      case 're-aimed':
      case 'disturbed':
        close();
        accept = undefined;
        open = undefined;
        break;
      case 'checked':
        close();
        break;
      case 'path':
        if (fact.state === 'clear') {
          clearSince = fact.seq;
          if (open && !open.cleared) amend({ cleared: fact });
        } else if (accept) {
          // A new cover ends the attempt with the one before.
          if (!open?.cleared) amend({ cleared: fact });
          close();
          const { seq, reading } = accept;
          const before = clear.findLast((each) => each.seq < fact.seq && each.seq > clearSince);
          const proof = fact.state === 'partial' ? 'alarm' : 'fault';
          open = {
            proof,
            accept: seq,
            accepted: reading,
            ...(before && { before }),
            clearReading: before?.reading ?? reading,
            covered: fact,
          };
          attempts.push(open);
        }
        break;
      case 'reading': {
        if (open && !open.cleared) amend({ reading: fact });
        const after = open?.cleared && clear.find(({ seq }) => seq === fact.seq);
        if (after && !open?.after && !open?.closed) amend({ after });
        break;
      }
      case 'panel':
        amend(shownIn(open, fact));
        break;
    }
  }
  return attempts.map((attempt) =>
    attempt.proof === 'alarm' && sideOf(attempt, setup) === 'below'
      ? { ...attempt, proof: 'quiet' }
      : attempt,
  );
}

function shownIn(open: Attempt | undefined, fact: Placed<'panel'>): Partial<Attempt> {
  if (!open || open.restored) return {};
  if (fact.shows === 'normal') return open.cleared ? { restored: fact } : {};
  if (!open.shown) return open.cleared ? {} : { shown: fact };
  return open.shown.shows !== fact.shows && !open.also ? { also: fact } : {};
}

/** What the panel last showed since the alignment was accepted. */
export function panelShows({ counted, search }: Commission): PanelIndication | undefined {
  const since = search.accepted?.seq;
  if (since === undefined) return undefined;
  const last = counted.findLast((fact) => fact.type === 'panel' && fact.seq > since);
  return last?.type === 'panel' ? last.shows : undefined;
}

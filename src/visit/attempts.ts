import type { Seq } from '../model/ids.ts';
import type { Placed } from '../model/placed.ts';
import type { Reading } from '../model/reading.ts';
import type { PanelIndication } from '../model/reports.ts';
import type { Commission } from './commission.ts';

/** The two proving tests: part of the light lost must give an alarm, all of it at once a fault. */
export type Proof = 'alarm' | 'fault';
export const PROOFS: readonly Proof[] = ['alarm', 'fault'];

/** One attempt at a proving test, from "covered" until the panel is back at normal, or as far as it got. */
export interface Attempt {
  readonly proof: Proof;
  /** The acceptance before it, and the reading accepted then. */
  readonly accept: Seq;
  readonly clearReading: Reading;
  readonly covered: Placed<'path'>;
  /** The first thing other than normal that the panel showed while it was covered. */
  readonly shown?: Placed<'panel'>;
  /** The last reading while it was covered. */
  readonly reading?: Placed<'reading'>;
  readonly cleared?: Placed<'path'>;
  readonly restored?: Placed<'panel'>;
}

/** Every attempt at a proving test since the first acceptance, oldest first; an earlier cover proves nothing. */
export function attemptsOf({ counted }: Pick<Commission, 'counted'>): Attempt[] {
  const attempts: Attempt[] = [];
  let accept: Placed<'accept'> | undefined;
  let open: Attempt | undefined;
  const amend = (change: Partial<Attempt>): void => {
    if (!open) return;
    open = { ...open, ...change };
    attempts[attempts.length - 1] = open;
  };
  for (const fact of counted) {
    switch (fact.type) {
      case 'accept':
        accept = fact;
        open = undefined;
        break;
      case 'move':
      case 'gain':
      case 're-aimed':
        accept = undefined;
        open = undefined;
        break;
      case 'path':
        if (fact.state === 'clear') {
          if (open && !open.cleared) amend({ cleared: fact });
        } else if (accept) {
          // A new cover ends the attempt with the one before.
          if (!open?.cleared) amend({ cleared: fact });
          const proof = fact.state === 'partial' ? 'alarm' : 'fault';
          open = { proof, accept: accept.seq, clearReading: accept.reading, covered: fact };
          attempts.push(open);
        }
        break;
      case 'reading':
        if (open && !open.cleared) amend({ reading: fact });
        break;
      case 'panel':
        amend(shownIn(open, fact));
        break;
    }
  }
  return attempts;
}

function shownIn(open: Attempt | undefined, fact: Placed<'panel'>): Partial<Attempt> {
  if (!open) return {};
  if (open.cleared) return fact.shows === 'normal' && !open.restored ? { restored: fact } : {};
  return fact.shows !== 'normal' && !open.shown ? { shown: fact } : {};
}

/** What the panel last showed since the alignment was accepted. */
export function panelShows({ counted, search }: Commission): PanelIndication | undefined {
  const since = search.accepted?.seq;
  if (since === undefined) return undefined;
  const last = counted.findLast((fact) => fact.type === 'panel' && fact.seq > since);
  return last?.type === 'panel' ? last.shows : undefined;
}

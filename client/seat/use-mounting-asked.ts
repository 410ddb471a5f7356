import { useState } from 'preact/hooks';
import { isOnePhone } from '../../src/model/alone.ts';
import type { Mounting } from '../../src/model/mounting.ts';
import type { Room } from './use-room.ts';

export interface Asked {
  asks: boolean;
  /** Undefined: it cannot be seen yet. */
  answer: (mounting: Mounting | undefined) => void;
}

/**
 * Whether the emitter's phone still has to ask how the unit hangs: once, before the first order, and not in practice, where
 * the pair is drawn upright.
 */
export function useMountingAsked({ saved, job, link, post }: Omit<Room, 'endPractice'>): Asked {
  const [later, setLater] = useState(false);
  const sent = link.outbox.some(({ letter }) => letter.t === 'mounted');
  const isThere = saved.seat === 'emitter' || isOnePhone(job.setup?.alone);
  const known = job.mounting !== undefined || sent || later;
  return {
    asks: isThere && job.setup !== undefined && !job.setup.practice && !job.accepted && !known,
    answer: (mounting) => (mounting ? post({ t: 'mounted', mounting }) : setLater(true)),
  };
}

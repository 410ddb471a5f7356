import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import type { Action } from '../../src/model/advice.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Actor, Fact } from '../../src/model/facts.ts';
import type { MessageId } from '../../src/model/ids.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import type { JobSetup } from '../../src/model/setup.ts';

export const TOKEN = 'abcdefghijklmnopqrstuv';

export const SETUP: JobSetup = {
  site: 'Tamsin Quay, hall 3',
  pair: 'B2',
  meter: NEUTRAL_METERS[1] as JobSetup['meter'],
  adjusters: NEUTRAL_ADJUSTERS,
};

/** A log of these facts, chained as a server would. */
export function logOf(facts: { actor: Actor; fact: Fact; ref?: MessageId }[], at = 1_000): Entry[] {
  let head = emptyHead('job-for-tests');
  return facts.map((draft) => {
    const entry = seal(head, draft, at);
    head = headAfter(entry);
    return entry;
  });
}

export const opened: { actor: Actor; fact: Fact } = {
  actor: 'panel',
  fact: { type: 'opened', setup: SETUP, logVersion: 1 },
};

export const remark = (text: string, ref?: MessageId): { actor: Actor; fact: Fact; ref?: MessageId } => ({
  actor: 'panel',
  fact: { type: 'remark', seat: 'panel', text },
  ...(ref && { ref }),
});

export const instruction = (
  action: Action,
  say: string,
  expiresAt: number,
): { actor: Actor; fact: Fact } => ({
  actor: 'engine',
  fact: {
    type: 'instruction',
    advice: { to: 'emitter', action, rule: 'test', because: [], figures: {} },
    say,
    show: say,
    why: '',
    expiresAt,
  },
});

export const QUARTER_TURN: Action = { kind: 'turn', axis: 'horizontal', eighths: 2, reversal: false };

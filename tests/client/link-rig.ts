import {
  type Effect,
  type Letter,
  type Link,
  type LinkEvent,
  newLink,
  step,
} from '../../client/link/link.ts';
import type { Refusal } from '../../src/model/refusal.ts';
import type { ServerMessage } from '../../src/protocol/socket.ts';
import { PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import { logOf, opened, TOKEN } from './fixtures.ts';

/** Between two beats of the timer, ms. */
export const TICK = 250;

/** A link on a clock that only moves when told to. */
export class LinkRig {
  link: Link = newLink(TOKEN);
  /** This phone's clock, ms. */
  now = 10_000;
  /** Of the last event. */
  effects: Effect[] = [];

  do(event: LinkEvent): this {
    const { link, effects } = step(this.link, event, this.now);
    this.link = link;
    this.effects = effects;
    return this;
  }

  hear(message: ServerMessage): this {
    return this.do({ on: 'frame', conn: this.link.conn, message });
  }

  /** Lets time pass with a living timer; returns all that was done meanwhile. */
  pass(ms: number): Effect[] {
    const done: Effect[] = [];
    for (const end = this.now + ms; this.now < end; ) {
      this.now = Math.min(end, this.now + TICK);
      done.push(...this.do({ on: 'tick' }).effects);
    }
    return done;
  }

  /** One beat of the timer, so long after the last thing that happened. */
  beatAfter(ms: number): Effect[] {
    this.now += ms;
    return this.do({ on: 'tick' }).effects;
  }

  goLive(entries = logOf([opened])): this {
    if (this.link.phase !== 'connecting') this.do({ on: 'start' });
    this.do({ on: 'opened', conn: this.link.conn });
    this.hear(welcome(this.now, entries));
    const fresh = entries.slice(this.link.entries.length);
    if (fresh.length > 0) this.hear({ t: 'entries', entries: fresh });
    return this.hear({ t: 'caught-up', seq: entries.length - 1 });
  }

  sent(effects = this.effects) {
    return effects.flatMap((e) => (e.do === 'send' ? [e.message] : []));
  }
}

export const welcome = (now: number, entries = logOf([opened])): ServerMessage => ({
  t: 'welcome',
  v: PROTOCOL_VERSION,
  role: 'panel',
  job: 'job-for-tests',
  head: { job: 'job-for-tests', count: entries.length, hash: entries.at(-1)?.hash ?? '0'.repeat(64) },
  now,
  speech: { name: 'test', ready: true },
});

export const say = (id: string, text = '142'): Letter => ({ t: 'say', id, via: 'typed', text });
export const refused = (reason: Refusal, id?: string): ServerMessage => ({
  t: 'refused',
  reason,
  text: `refused: ${reason}`,
  ...(id && { id }),
});

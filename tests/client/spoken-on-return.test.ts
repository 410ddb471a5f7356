import { describe, expect, it } from 'vitest';
import { JobFold, order } from '../../client/seat/view.ts';
import { linesSince, NOTHING_FOLLOWED } from '../../client/speak/script.ts';
import type { SpeakerEffect } from '../../client/speak/speaker.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Actor, Fact } from '../../src/model/facts.ts';
import type { ServerMessage } from '../../src/protocol/socket.ts';
import { instruction, logOf, opened, QUARTER_TURN, remark } from './fixtures.ts';
import { LinkRig, welcome } from './link-rig.ts';
import { SpeakerRig } from './speaker-rig.ts';

/** The emitter phone from its socket to its voice, as far as neither is needed. */
class ListeningPhone {
  readonly link = new LinkRig();
  readonly voice = new SpeakerRig();
  /** How far the server's clock is ahead of the phone's, ms. */
  private readonly ahead: number;
  private readonly folding = new JobFold();
  private followed = NOTHING_FOLLOWED;
  private done: SpeakerEffect[] = [];

  constructor(ahead = 0) {
    this.ahead = ahead;
  }

  /** As the screen does whenever the link has news. */
  private draw(): this {
    const { link, now } = this.link;
    const stands = order(link, this.folding.upTo(link.entries), now);
    const current = stands.kind === 'current' ? stands.instruction : undefined;
    const saidUpTo = this.voice.speaker.said;
    const { followed, events } = linesSince(this.followed, link, { current, saidUpTo }, 'emitter', now);
    this.followed = followed;
    this.voice.now = now;
    for (const event of events) this.done.push(...this.voice.do(event).effects);
    return this;
  }

  hears(message: ServerMessage): this {
    this.link.hear(message);
    return this.draw();
  }

  /** Connects, and is told what it does not hold of the log, entry by entry. */
  comesIn(log: readonly Entry[]): this {
    this.link.do({ on: this.link.link.conn === 0 ? 'start' : 'online' });
    this.link.do({ on: 'opened', conn: this.link.link.conn });
    this.hears(welcome(this.link.now + this.ahead));
    for (const entry of log.slice(this.link.link.entries.length))
      this.hears({ t: 'entries', entries: [entry] });
    return this.hears({ t: 'caught-up', seq: log.length - 1 });
  }

  loses(): this {
    this.link.do({ on: 'closed', conn: this.link.link.conn });
    return this.draw();
  }

  /** The voice says to its end what it was given. */
  saysAll(): this {
    this.voice.do({ on: 'began' });
    this.done.push(...this.voice.do({ on: 'ended' }).effects);
    return this;
  }

  /** Lets the voice rest after a cut. */
  rests(): this {
    this.link.now += 1_000;
    this.voice.now = this.link.now;
    this.done.push(...this.voice.do({ on: 'tick' }).effects);
    return this;
  }

  /** What was said and signalled since it was last looked at. */
  get heard(): string[] {
    return this.done
      .splice(0)
      .map((effect) => ('text' in effect ? effect.text : 'cue' in effect ? effect.cue : effect.do));
  }
}

type Draft = { actor: Actor; fact: Fact };
const NOW = new LinkRig().now;
const turn = (say: string, expiresAt = NOW + 60_000): Draft => instruction(QUARTER_TURN, say, expiresAt);
const fact = (of: Fact): Draft => ({ actor: 'engine', fact: of });
const readback = fact({ type: 'readback', of: 0, text: 'Heard 142.' });

describe('a phone that comes in says, of all that was before,', () => {
  it.each<[string, Draft[], string[]]>([
    ['nothing where nothing is asked', [readback, fact({ type: 'query', of: 0, text: 'Which?' })], []],
    ['no notice', [fact({ type: 'notice', code: 'not-proven', text: 'Not yet.' })], []],
    ['not that the work was stopped', [fact({ type: 'stopped' })], []],
    ['not that the crew waits', [fact({ type: 'pause' })], []],
    ['the instruction that holds, with its signal', [turn('One.')], ['act', 'One.']],
    ['and not what came after it', [turn('One.'), readback], ['act', 'One.']],
    [
      'the newest of several instructions alone',
      [turn('One.'), turn('Two.'), turn('Three.')],
      ['act', 'Three.'],
    ],
    [
      'none that was withdrawn',
      [turn('One.'), fact({ type: 'withdrawn', instruction: 1, why: 'paused' })],
      [],
    ],
    [
      'one that stands beside an older withdrawn one',
      [turn('One.'), turn('Two.'), fact({ type: 'withdrawn', instruction: 1, why: 'changed' })],
      ['act', 'Two.'],
    ],
    ['none that has just expired', [turn('One.', NOW)], []],
    ['one that expires in a moment', [turn('One.', NOW + 1)], ['act', 'One.']],
    ['no older one in place of one that expired', [turn('One.'), turn('Two.', NOW)], []],
  ])('%s', (_, drafts, heard) => {
    expect(new ListeningPhone().comesIn(logOf([opened, ...drafts])).heard).toEqual(heard);
  });

  it.each<[string, number, number, string[]]>([
    ['an hour ahead: not expired', 3_600_000, 3_600_001, ['act', 'One.']],
    ['an hour ahead: expired', 3_600_000, 3_600_000, []],
    ['an hour behind: not expired', -3_600_000, -3_599_999, ['act', 'One.']],
    ['an hour behind: expired', -3_600_000, -3_600_000, []],
  ])('what holds by the server’s clock, be that %s', (_, ahead, expiresIn, heard) => {
    const log = logOf([opened, turn('One.', NOW + expiresIn)]);
    expect(new ListeningPhone(ahead).comesIn(log).heard).toEqual(heard);
  });
});

describe('a phone that comes back', () => {
  const log = logOf([opened, turn('One.'), readback, turn('Two.'), readback, turn('Three.')]);
  const upTo = (count: number) => log.slice(0, count);

  it('says nothing while it is told what it missed, and then the last instruction alone', () => {
    const phone = new ListeningPhone().comesIn(upTo(2)).saysAll();
    expect(phone.heard).toEqual(['act', 'One.']);
    phone.loses();
    expect(phone.heard).toEqual([]);
    expect(phone.comesIn(log).heard).toEqual(['act', 'Three.']);
  });

  it('does not say again what it said to its end', () => {
    const phone = new ListeningPhone().comesIn(upTo(2)).saysAll().loses();
    expect(phone.heard).toEqual(['act', 'One.']);
    expect(phone.comesIn(upTo(3)).heard).toEqual([]);
  });

  it('says again, from the beginning, what was cut off by the loss', () => {
    const phone = new ListeningPhone().comesIn(upTo(2)).loses();
    expect(phone.heard).toEqual(['act', 'One.', 'cut']);
    expect(phone.comesIn(upTo(3)).rests().heard).toEqual(['act', 'One.']);
  });

  it('forgets what still waited to be said', () => {
    const phone = new ListeningPhone().comesIn(upTo(1));
    phone.hears({ t: 'entries', entries: [log[1] as Entry, log[2] as Entry] }).loses();
    expect(phone.heard).toEqual(['act', 'One.', 'cut']);
    phone.comesIn(upTo(4)).rests();
    expect(phone.heard).toEqual(['act', 'Two.']);
    expect(phone.saysAll().heard).toEqual([]);
  });

  it('says what comes from then on, each once', () => {
    const phone = new ListeningPhone().comesIn(upTo(2)).saysAll().loses().comesIn(upTo(3));
    expect(phone.heard).toEqual(['act', 'One.']);
    phone.hears({ t: 'entries', entries: [log[3] as Entry] }).saysAll();
    expect(phone.heard).toEqual(['act', 'Two.']);
    phone.hears({ t: 'presence', presence: { panel: 'online', emitter: 'online', watchers: 0 } });
    expect(phone.heard).toEqual([]);
    phone.hears({ t: 'entries', entries: [log[4] as Entry] }).saysAll();
    expect(phone.heard).toEqual(['Heard one four two.']);
  });

  it('says once what came before it was drawn: the instruction that holds, and what is new after it', () => {
    const phone = new ListeningPhone();
    const { link } = phone;
    link.do({ on: 'start' }).do({ on: 'opened', conn: 1 }).hear(welcome(link.now));
    link.hear({ t: 'entries', entries: upTo(2) }).hear({ t: 'caught-up', seq: 1 });
    phone.hears({ t: 'entries', entries: [log[2] as Entry] }).saysAll();
    expect(phone.heard).toEqual(['act', 'One.', 'Heard one four two.']);
  });

  it('that came to a job just opened says the first entry after that', () => {
    const link = { phase: 'live', conn: 1, entries: upTo(2), historyEnd: 0, offset: undefined } as const;
    const { events } = linesSince(
      NOTHING_FOLLOWED,
      link,
      { current: undefined, saidUpTo: -1 },
      'emitter',
      NOW,
    );
    // A phone that does not know the server's clock takes it for its own.
    expect(events).toMatchObject([{ on: 'say', announcement: { text: 'One.', until: NOW + 60_000 } }]);
  });

  it('never goes back behind what it has followed already, wherever history is said to end', () => {
    const followed = { conn: 1, upTo: 2 };
    const link = { phase: 'live', conn: 2, entries: upTo(3), historyEnd: 1, offset: undefined } as const;
    const nothing = { current: undefined, saidUpTo: -1 };
    expect(linesSince(followed, link, nothing, 'panel', NOW)).toEqual({
      followed: { conn: 2, upTo: 2 },
      events: [],
    });
  });
});

it.each(['resting', 'connecting', 'catching-up', 'ended'] as const)(
  'a phone whose link is %s forgets what waits, and follows nothing',
  (phase) => {
    const entries = logOf([opened, readback, remark('late')]);
    const link = { phase, conn: 4, entries, historyEnd: -1, offset: 0 } as const;
    const followed = { conn: 3, upTo: 0 };
    expect(linesSince(followed, link, { current: undefined, saidUpTo: -1 }, 'panel', NOW)).toEqual({
      followed,
      events: [{ on: 'forget' }],
    });
  },
);

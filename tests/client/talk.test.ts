import { describe, expect, it } from 'vitest';
import { levelOf, meterShare, TOO_LOUD } from '../../client/audio/level.ts';
import {
  ANSWER_WITHIN_MS,
  IDLE,
  LONGEST_MS,
  TAP_MS,
  type TalkEffect,
  type TalkEvent,
  type TalkState,
  talk,
} from '../../client/audio/talk.ts';
import { MAX_TALK_MS } from '../../src/protocol/socket.ts';

class Button {
  state: TalkState = IDLE;
  now = 0;
  done: TalkEffect[] = [];

  do(event: TalkEvent): this {
    const { state, effects } = talk(this.state, event, this.now);
    this.state = state;
    this.done.push(...effects);
    return this;
  }
  pass(ms: number): this {
    this.now += ms;
    return this.do({ on: 'tick' });
  }
}

const OPENED = { on: 'opened', id: 'talk-0001' } as const;

describe('the talk button', () => {
  it('held: records until it is let go, then sends', () => {
    const button = new Button().do({ on: 'press' }).pass(100).do(OPENED).pass(2_000).do({ on: 'release' });
    expect(button.done).toEqual(['open', 'send', 'close']);
    expect(button.state.phase).toBe('working');
  });

  it('tapped: records until it is tapped again, then sends', () => {
    const button = new Button().do({ on: 'press' }).pass(50).do(OPENED).pass(50).do({ on: 'release' });
    expect(button.state).toMatchObject({ phase: 'talking', latched: true });
    button.pass(3_000).do({ on: 'press' }).do({ on: 'release' });
    expect(button.done).toEqual(['open', 'send', 'close']);
  });

  it('tapped while the microphone is still opening: counts as a tap', () => {
    const button = new Button()
      .do({ on: 'press' })
      .pass(TAP_MS - 1)
      .do({ on: 'release' })
      .pass(900)
      .do(OPENED);
    expect(button.state).toMatchObject({ phase: 'talking', latched: true });
  });

  it('held but let go before the microphone was open: sends nothing', () => {
    const button = new Button()
      .do({ on: 'press' })
      .pass(TAP_MS + 500)
      .do({ on: 'release' });
    expect(button.state).toEqual(IDLE);
    expect(button.done).toEqual(['open', 'drop', 'close']);
  });

  it('throws the sound away when the finger slides off the button', () => {
    const button = new Button().do({ on: 'press' }).do(OPENED).pass(1_000).do({ on: 'cancel' });
    expect(button.done).toEqual(['open', 'drop', 'close']);
  });

  it('keeps a tapped talk even when the finger slides off', () => {
    const button = new Button().do({ on: 'press' }).do(OPENED).do({ on: 'release' }).do({ on: 'cancel' });
    expect(button.state.phase).toBe('talking');
  });

  it('sends by itself before the server would cut the talk short', () => {
    const button = new Button().do({ on: 'press' }).do(OPENED).do({ on: 'release' }).pass(LONGEST_MS);
    expect(button.done).toEqual(['open', 'send', 'close']);
    expect(LONGEST_MS).toBeLessThan(MAX_TALK_MS);
  });

  it('is free again when the server has answered, and also when it never answers', () => {
    const spoken = () => new Button().do({ on: 'press' }).do(OPENED).pass(1_000).do({ on: 'release' });
    expect(spoken().do({ on: 'answered', id: 'another-talk' }).state.phase).toBe('working');
    expect(spoken().do({ on: 'answered', id: OPENED.id }).state).toEqual(IDLE);
    expect(spoken().pass(ANSWER_WITHIN_MS).state).toEqual(IDLE);
  });

  it('closes the microphone when it or the link fails', () => {
    expect(new Button().do({ on: 'press' }).do({ on: 'failed' }).done).toEqual(['open', 'drop', 'close']);
    expect(new Button().do({ on: 'failed' }).done).toEqual([]);
  });

  it('takes no second press while the speech is being recognised', () => {
    const button = new Button()
      .do({ on: 'press' })
      .do(OPENED)
      .pass(1_000)
      .do({ on: 'release' })
      .do({ on: 'press' });
    expect(button.done).toEqual(['open', 'send', 'close']);
  });
});

describe('the level meter', () => {
  it('shows a full-scale sine at -3 dB and silence at the bottom', () => {
    const sine = Float32Array.from({ length: 4800 }, (_, n) => Math.sin((2 * Math.PI * n) / 48));
    expect(levelOf(sine).db).toBeCloseTo(-3.01, 1);
    expect(meterShare(levelOf(new Float32Array(100)).db)).toBe(0);
  });

  it('notices clipping', () => {
    const loud = Float32Array.from({ length: 4800 }, (_, n) =>
      Math.max(-1, Math.min(1, 3 * Math.sin(n / 8))),
    );
    expect(levelOf(loud).clipped).toBeGreaterThan(TOO_LOUD);
    expect(levelOf(loud.map((s) => s * 0.5)).clipped).toBe(0);
  });
});

import { pino } from 'pino';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { systemClock } from '../../server/process/clock.ts';
import type { AskForStamp } from '../../server/stamps/ask.ts';
import { NoStamp } from '../../server/stamps/ask.ts';
import { LEAST_GAP_MS, RETRY_MS, retryAfter, Stamper } from '../../server/stamps/stamper.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { Telemetry } from '../../server/telemetry/telemetry.ts';
import type { TreeHead } from '../../src/log/signed-head.ts';
import { stampText } from '../../src/log/time-stamp.ts';

const EVERY_MS = 60 * 60_000;
const log = pino({ enabled: false });

/** A stamper whose authority is this function, and a store. */
function house(ask: AskForStamp, store = new MemoryStore()) {
  const telemetry = new Telemetry(log);
  const clock = systemClock;
  const stamper = new Stamper({ store, clock, log, telemetry, ask, from: 'tsa.example', everyMs: EVERY_MS });
  const head = (size: number): TreeHead => ({
    ...{ size, root: 'a'.repeat(64), at: Date.now(), key: 'key', signature: 'signature' },
  });
  return {
    ...{ store, stamper, telemetry },
    async moved(size: number, atOnce = false) {
      stamper.moved(size, () => head(size), atOnce);
      await vi.advanceTimersByTimeAsync(0);
    },
  };
}

const granting = () =>
  vi.fn<AskForStamp>(async () => ({
    nonce: '4'.repeat(32),
    token: 'AAAA',
    checked: { kind: 'proven', by: 'CN=a', until: 0, at: Date.now() },
  }));
const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms);

beforeEach(() => void vi.useFakeTimers({ now: Date.UTC(2026, 5, 1) }));
afterEach(() => void vi.useRealTimers());

describe('R133: when the head of the tree is stamped', () => {
  it('at the first head, then not before an hour has gone, and only if it has changed', async () => {
    const ask = granting();
    const { moved, store } = house(ask);
    await moved(1);
    expect(ask).toHaveBeenCalledTimes(1);
    expect(ask.mock.calls[0]?.[0]).toBe(
      stampText({ size: 1, root: 'a'.repeat(64), at: Date.now(), key: 'key', signature: 'signature' }),
    );
    await moved(2);
    await moved(3);
    await pass(EVERY_MS - 1);
    expect(ask).toHaveBeenCalledTimes(1);
    await pass(1);
    expect(ask).toHaveBeenCalledTimes(2);
    expect((await store.lastStamp())?.size).toBe(3);
    // The same again, for a day.
    await moved(3);
    await pass(24 * EVERY_MS);
    expect(ask).toHaveBeenCalledTimes(2);
  });

  it('at once when a person has signed, but a minute after the one before', async () => {
    const ask = granting();
    const { moved } = house(ask);
    await moved(1);
    await moved(2, true);
    await pass(LEAST_GAP_MS - 1);
    expect(ask).toHaveBeenCalledTimes(1);
    await pass(1);
    expect(ask).toHaveBeenCalledTimes(2);
    await pass(LEAST_GAP_MS);
    await moved(3, true);
    expect(ask).toHaveBeenCalledTimes(3);
    // The haste is over with it.
    await moved(4);
    await pass(LEAST_GAP_MS);
    expect(ask).toHaveBeenCalledTimes(3);
  });

  it('not again after a restart within the hour, and from the newest of the store', async () => {
    const store = new MemoryStore();
    const first = house(granting(), store);
    await first.moved(5);
    await first.stamper.close();
    const ask = granting();
    await pass(EVERY_MS / 2);
    const second = house(ask, store);
    await second.moved(5);
    await pass(EVERY_MS);
    expect(ask).not.toHaveBeenCalled();
    await second.moved(6);
    expect(ask).toHaveBeenCalledTimes(1);
    const third = house(ask, store);
    await third.moved(7);
    await pass(EVERY_MS - 1);
    expect(ask).toHaveBeenCalledTimes(1);
    await pass(1);
    expect(ask).toHaveBeenCalledTimes(2);
  });

  it('one at a time: what changes while the authority thinks comes with the next', async () => {
    let answer = () => {};
    const ask = granting();
    ask.mockImplementationOnce(async () => {
      await new Promise<void>((resolve) => {
        answer = resolve;
      });
      return {
        nonce: '4'.repeat(32),
        token: 'AAAA',
        checked: { kind: 'proven', by: 'CN=a', until: 0, at: 0 },
      };
    });
    const { moved, store } = house(ask);
    await moved(1);
    await moved(2, true);
    await pass(5 * EVERY_MS);
    expect(ask).toHaveBeenCalledTimes(1);
    answer();
    await pass(0);
    expect(ask).toHaveBeenCalledTimes(2);
    expect((await store.lastStamp())?.size).toBe(2);
  });
});

describe('R134: where no time stamp can be had', () => {
  it('waits a minute, then twice as long each time, up to an hour', () => {
    expect([1, 2, 3, 6, 7, 8, 60].map((count) => retryAfter(count, EVERY_MS) / RETRY_MS)).toEqual([
      1, 2, 4, 32, 60, 60, 60,
    ]);
    expect(retryAfter(9, 10 * 60_000)).toBe(10 * 60_000);
    expect(retryAfter(9, 1)).toBe(RETRY_MS);
  });

  it('says so to supervisor and metrics, asks again, and is calm again once it has one', async () => {
    const ask = granting();
    ask
      .mockRejectedValueOnce(new NoStamp('it answered 503'))
      .mockRejectedValueOnce(new Error('fetch failed'));
    const { moved, stamper, telemetry, store } = house(ask);
    const began = Date.now();
    expect(stamper.state).toEqual({ from: 'tsa.example', isBehind: false });
    await moved(3);
    expect(stamper.state).toEqual({ from: 'tsa.example', isBehind: true, failingSince: began });
    expect(await telemetry.metrics.text()).toMatch(/^ladderline_stamps_failing 1$/m);
    expect(await telemetry.metrics.text()).toMatch(/^ladderline_stamps_behind_heads 3$/m);
    // A signature makes nobody who is down answer sooner.
    await moved(4, true);
    await pass(RETRY_MS - 1);
    expect(ask).toHaveBeenCalledTimes(1);
    await pass(1);
    expect(ask).toHaveBeenCalledTimes(2);
    expect(stamper.state.failingSince).toBe(began);
    await pass(2 * RETRY_MS - 1);
    expect(ask).toHaveBeenCalledTimes(2);
    await pass(1);
    expect(ask).toHaveBeenCalledTimes(3);
    expect(stamper.state).toEqual({ from: 'tsa.example', isBehind: false, last: Date.now() });
    expect((await store.lastStamp())?.size).toBe(4);
    const text = await telemetry.metrics.text();
    expect(text).toMatch(/^ladderline_stamps_failing 0$/m);
    expect(text).toMatch(/^ladderline_stamps_total\{result="failed"\} 2$/m);
    expect(text).toMatch(/^ladderline_stamps_total\{result="kept"\} 1$/m);
    expect(text).toMatch(new RegExp(`^ladderline_stamps_last_seconds ${Date.now() / 1000}$`, 'm'));
  });

  it('one that cannot be stored is no time stamp', async () => {
    const ask = granting();
    const store = new MemoryStore();
    store.addStamp = async () => {
      throw new Error('the disk is full');
    };
    const { moved, stamper } = house(ask, store);
    await moved(1);
    expect(stamper.state).toMatchObject({ isBehind: true, failingSince: Date.now() });
  });

  it('does not hold up the end of the server', async () => {
    const ask: AskForStamp = (_, signal) =>
      new Promise((_resolve, reject) => {
        signal.addEventListener('abort', () => reject(signal.reason));
      });
    const { moved, stamper } = house(ask);
    await moved(1);
    await stamper.close();
    await pass(0);
    // Being ended is no failure of the authority.
    expect(stamper.state.failingSince).toBeUndefined();
    await moved(2);
    await pass(EVERY_MS);
    expect(vi.getTimerCount()).toBe(0);
  });
});

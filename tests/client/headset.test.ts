import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { WaveFile } from 'wavefile';
import { listenToHeadset } from '../../client/audio/headset.ts';

/** A browser's keys and its player, as the standards say (Media Session; HTML, media elements). */
class Player {
  static made: Player[] = [];
  static allowed = true;
  loop = false;
  paused = true;
  constructor(readonly src: string) {
    Player.made.push(this);
  }
  play() {
    if (!Player.allowed) return Promise.reject(new DOMException('not yet', 'NotAllowedError'));
    this.paused = false;
    return Promise.resolve();
  }
  pause() {
    this.paused = true;
  }
}

describe('the keys of a headset', () => {
  let keys: Record<'main' | 'next', ReturnType<typeof vi.fn<() => void>>>;
  let handlers: Map<string, (() => void) | null>;
  let session: { playbackState: string; setActionHandler(action: string, to: (() => void) | null): void };
  let sound: Blob | undefined;
  const touches = new Set<() => void>();

  beforeEach(() => {
    keys = { main: vi.fn<() => void>(), next: vi.fn<() => void>() };
    handlers = new Map();
    session = { playbackState: 'none', setActionHandler: (action, to) => void handlers.set(action, to) };
    Player.made = [];
    touches.clear();
    Player.allowed = true;
    vi.stubGlobal('Audio', Player);
    vi.stubGlobal('navigator', { mediaSession: session });
    vi.stubGlobal('addEventListener', (_: string, call: () => void) => touches.add(call));
    vi.stubGlobal('removeEventListener', (_: string, call: () => void) => touches.delete(call));
    vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
      sound = blob as Blob;
      return 'blob:silence';
    });
    vi.spyOn(URL, 'revokeObjectURL').mockImplementation(() => {});
  });
  afterEach(() => {
    vi.unstubAllGlobals();
    vi.restoreAllMocks();
  });

  it('one key speaks, whether the browser calls it play or pause; the next one says the order again', () => {
    listenToHeadset(keys);
    handlers.get('play')?.();
    handlers.get('pause')?.();
    expect(keys.main).toHaveBeenCalledTimes(2);
    expect(keys.next).not.toHaveBeenCalled();
    handlers.get('nexttrack')?.();
    expect(keys.next).toHaveBeenCalledOnce();
    expect(keys.main).toHaveBeenCalledTimes(2);
  });

  it('plays nothing but silence for them, long enough to be given keys', async () => {
    listenToHeadset(keys);
    const wave = new WaveFile(new Uint8Array(await (sound as Blob).arrayBuffer()));
    const samples = wave.getSamples() as unknown as Float64Array;
    expect(new Set(samples)).toEqual(new Set([128]));
    // Chromium, "Customize media notifications": nothing shorter than five seconds gets them.
    expect(samples.length / (wave.fmt as { sampleRate: number }).sampleRate).toBeGreaterThan(5);
    expect(Player.made[0]?.loop).toBe(true);
  });

  it('begins with the first touch where a page may not play before one, and ends with its page', async () => {
    Player.allowed = false;
    const end = listenToHeadset(keys);
    await Promise.resolve();
    expect(Player.made[0]?.paused).toBe(true);
    Player.allowed = true;
    for (const touch of touches) touch();
    await Promise.resolve();
    expect(Player.made[0]?.paused).toBe(false);
    end();
    expect(Player.made[0]?.paused).toBe(true);
    expect([...handlers.values()]).toEqual([null, null, null]);
    expect(touches.size).toBe(0);
  });

  it('are left alone where the browser has none, or not all of them', () => {
    vi.stubGlobal('navigator', {});
    expect(() => listenToHeadset(keys)()).not.toThrow();
    expect(Player.made).toEqual([]);
    session.setActionHandler = () => {
      throw new TypeError('not a known action');
    };
    vi.stubGlobal('navigator', { mediaSession: session });
    expect(() => listenToHeadset(keys)()).not.toThrow();
  });
});

import { describe, expect, it, onTestFinished } from 'vitest';
import wavefile from 'wavefile';
import { openVoice } from '../../server/voice/start.ts';
import { isInstalled } from '../../server/voice/synthesiser.ts';
import { sayable, type VoiceMaker } from '../../server/voice/voice.ts';
import { HttpRefusal } from '../../src/protocol/jobs.ts';
import { serve } from './house.ts';
import { get, openJob } from './phone.ts';

const ask = (text: string, rate?: number): string =>
  `/api/voice?${new URLSearchParams({ text, ...(rate !== undefined && { rate: String(rate) }) })}`;

/** Seconds of sound, and whether any of it is loud enough to be heard. */
async function sound(response: Response): Promise<{ seconds: number; loud: boolean }> {
  const wav = new wavefile.WaveFile(new Uint8Array(await response.arrayBuffer()));
  const samples = wav.getSamples(false, Int16Array) as unknown as Int16Array;
  const { sampleRate } = wav.fmt as { sampleRate: number };
  return { seconds: samples.length / sampleRate, loud: samples.some((s) => Math.abs(s) > 3_000) };
}

const STAND_IN = new URL('stand-in-voice.mjs', import.meta.url).href;

function standIn(withinMs?: number): VoiceMaker {
  const voice = openVoice({ synthesiser: STAND_IN, ...(withinMs && { withinMs }) });
  onTestFinished(() => voice.close());
  return voice;
}

/** The synthesiser itself is an optional package; where it is not installed, a stand-in takes its place. */
const VOICES = [
  { name: 'a stand-in', open: standIn },
  ...(isInstalled() ? [{ name: 'the installed synthesiser', open: () => openVoice() }] : []),
];

describe('the voice of the server', () => {
  it.each(VOICES)(
    'R40: speaks a text for a phone of the job, slower or quicker, and for nobody else: $name',
    async ({ open }) => {
      const { url } = await serve({ voice: open() });
      const { token, watch } = await openJob(url);
      const text = 'Heard one four two. Turn the upper screw a quarter turn clockwise.';
      const said = await get(url, ask(text), token);
      expect(said.headers.get('content-type')).toBe('audio/wav');
      const usual = await sound(said);
      expect(usual.loud).toBe(true);
      expect(usual.seconds).toBeGreaterThan(2);
      expect((await sound(await get(url, ask(text, 1.6), watch))).seconds).toBeLessThan(usual.seconds * 0.8);
      for (const stranger of [undefined, 'A'.repeat(22)]) {
        expect((await get(url, ask(text), stranger)).status).toBe(401);
      }
    },
  );

  it('R40: refuses a text that is empty or too long, a pace out of range, and too much at once', async () => {
    const voice = { say: async () => new Uint8Array(44), close: async () => {} };
    const { url } = await serve({ voice, limits: { voices: { burst: 2, perSecond: 0 } } });
    const { token } = await openJob(url);
    const reason = async (path: string) =>
      HttpRefusal.parse(await (await get(url, path, token)).json()).reason;
    expect(await reason(ask(' '))).toBe('bad-message');
    expect(await reason(ask('hold', 9))).toBe('bad-message');
    expect(await reason(ask('a'.repeat(401)))).toBe('too-long');
    await get(url, ask('hold'), token);
    await get(url, ask('hold'), token);
    expect(await reason(ask('hold'))).toBe('too-fast');
  });

  it('R40: says so when there is no voice', async () => {
    const { url } = await serve();
    const { token } = await openJob(url);
    const answer = await get(url, ask('hold'), token);
    expect(answer.status).toBe(503);
    expect(HttpRefusal.parse(await answer.json())).toEqual({
      reason: 'speech-unavailable',
      text: 'This server was started without a voice. Read the screen.',
    });
  });

  it('never takes a text for an option or a command, and makes the same sentence only once', async () => {
    expect(sayable('-w /tmp/x')).toBe('w /tmp/x');
    expect(sayable('Beam “4” — isn’t <b>here</b>')).toBe("Beam 4 isn't b here /b");
    const voice = standIn();
    const both = [voice.say('Hold still.', 1), voice.say('  Hold still.', 1)];
    expect(both[0]).toBe(both[1]);
    await Promise.all(both);
  });

  it('says so when the synthesiser breaks down or never answers, and begins it restartedAt for the next', async () => {
    const voice = standIn();
    await expect(voice.say('broken', 1)).rejects.toThrow(/broke down: no such word/);
    expect((await voice.say('Hold.', 1)).length).toBeGreaterThan(44);
    await expect(standIn(100).say('never', 1)).rejects.toThrow(/did not answer/);
  });

  it('says so where the synthesiser is not installed', async () => {
    const voice = openVoice({ synthesiser: 'no-such-package' });
    await expect(voice.say('Hold.', 1)).rejects.toThrow(/Cannot find package 'no-such-package'/);
  });

  it.runIf(isInstalled())('keeps the server answering while it speaks', async () => {
    const { url } = await serve({ voice: openVoice() });
    const { token } = await openJob(url);
    let answered = false;
    const speaking = get(url, ask('Turn the left screw one turn clockwise. '.repeat(8)), token).then(
      (response) => {
        answered = true;
        return response;
      },
    );
    expect((await get(url, '/api/health')).status).toBe(200);
    expect(answered).toBe(false);
    expect((await speaking).status).toBe(200);
  });
});

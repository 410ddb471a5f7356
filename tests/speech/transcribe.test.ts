import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { beforeAll, describe, expect, it } from 'vitest';
import { ROOT_FOLDER } from '../../server/process/program.ts';
import { spokenFile } from '../sounds/spoken.ts';
import { END, START, writeWhisper } from './whisper-folder.ts';

const folder = mkdtempSync(join(tmpdir(), 'ladderline-transcribe-'));
const at = (file: string): string => join(folder, file);

interface Line {
  file: string;
  text: string;
  [name: string]: unknown;
}

async function transcribe(
  ...args: string[]
): Promise<{ lines: Line[]; complaints: string; status: number | null }> {
  const program = join(ROOT_FOLDER, 'server', 'speech', 'transcribe.ts');
  const child = spawn(process.execPath, ['--import', 'tsx', program, ...args], { cwd: ROOT_FOLDER });
  const [lines, complaints, [status]] = await Promise.all([
    text(child.stdout),
    text(child.stderr),
    once(child, 'close') as Promise<[number | null]>,
  ]);
  return {
    lines: lines
      .split('\n')
      .filter(Boolean)
      .map((line) => JSON.parse(line) as Line),
    complaints,
    status,
  };
}

const HEADER_BYTES = 44;

/** Two 16-bit WAV files said at once, ending together, as long as the shorter. */
function bothAtOnce(a: Buffer, b: Buffer): Buffer {
  const mixed = Buffer.from(a.length < b.length ? a : b);
  for (let back = 2; back <= mixed.length - HEADER_BYTES; back += 2) {
    const sum = a.readInt16LE(a.length - back) + b.readInt16LE(b.length - back);
    mixed.writeInt16LE(Math.trunc(sum / 2), mixed.length - back);
  }
  return mixed;
}

// Each starts a process that loads the model.
const PATIENCE_MS = 180_000;

describe('transcribe', { timeout: PATIENCE_MS }, () => {
  beforeAll(() => {
    copyFileSync(spokenFile('one forty two'), at('reading.wav'));
    copyFileSync(spokenFile('saturated'), at('saturated.wav'));
    const [fifteen, fifty] = [readFileSync(spokenFile('fifteen')), readFileSync(spokenFile('fifty'))];
    writeFileSync(at('either.wav'), bothAtOnce(fifteen, fifty));
    writeFileSync(at('text.wav'), 'not a sound');
  });

  it('prints a line of JSON for each file, and goes on behind one that is no sound', async () => {
    const { lines, complaints, status } = await transcribe(
      at('reading.wav'),
      at('text.wav'),
      at('none.wav'),
      at('saturated.wav'),
    );
    expect(lines).toMatchObject([
      { file: at('reading.wav'), text: 'one forty two', outcome: 'taken', intent: ['reading'], value: 142 },
      {
        file: at('saturated.wav'),
        text: 'saturated',
        outcome: 'taken',
        intent: ['reading'],
        value: 'saturated',
      },
    ]);
    for (const { confidence, alternatives, ms } of lines) {
      expect(confidence).toBeGreaterThan(0.9);
      expect(alternatives).toContainEqual(expect.objectContaining({ confidence: expect.any(Number) }));
      expect(ms).toEqual(expect.any(Number));
    }
    expect(complaints).toMatch(/text\.wav is neither a WAV nor a FLAC file/);
    expect(complaints).toMatch(/none\.wav/);
    expect(status).toBe(1);
  });

  it('gives the letters alone with --open', async () => {
    const { lines } = await transcribe('--open', at('saturated.wav'));
    expect(lines).toEqual([{ file: at('saturated.wav'), text: 'saturated', ms: expect.any(Number) }]);
  });

  it('believes a reading more that --expect makes likely', async () => {
    // Two words at once: "fifteen" is likeliest, and "fife fifteen", 515, is found, too.
    const of515 = async (range: string): Promise<number> => {
      const { lines } = await transcribe('--expect', range, at('either.wav'));
      const heard = lines[0]?.alternatives as { text: string; confidence: number }[];
      return heard.find(({ text }) => text === 'fife fifteen')?.confidence ?? 0;
    };
    const unlikely = await of515('10..15');
    expect(unlikely).toBeGreaterThan(0);
    expect(await of515('500..600')).toBeGreaterThan(5 * unlikely);
  });

  it('takes another model by --model', async () => {
    const model = join(folder, 'whisper');
    writeWhisper(model, { [START]: { eleven: 1 }, eleven: { [END]: 1 } });
    expect((await transcribe('--model', model, at('reading.wav'))).lines).toMatchObject([
      { text: 'eleven', value: 11, outcome: 'doubtful' },
    ]);
  });

  it.each([
    [['--expect', '9..3', 'x.wav'], /two numbers, e\.g\. 100\.\.160/],
    [['--model', folder, 'x.wav'], /There is no speech model in .*config\.json/],
  ])('says what is wrong with %j', async (args, complaint) => {
    const { complaints, status } = await transcribe(...args);
    expect(complaints).toMatch(complaint);
    expect(status).toBe(1);
  });
});

const PEOPLE = join(ROOT_FOLDER, '..', 'shared', 'speech', 'an4', 'audio');
describe.runIf(existsSync(PEOPLE))('people', { timeout: PATIENCE_MS }, () => {
  it('are heard from FLAC files', async () => {
    const files = readdirSync(PEOPLE).filter((file) => /-(mjbh|mmal|ffmm)-/.test(file));
    const { lines } = await transcribe('--open', ...files.slice(0, 5).map((file) => join(PEOPLE, file)));
    expect(lines).toHaveLength(5);
    for (const { text: words } of lines) expect(words).toMatch(/^[a-z' ]+$/);
  });
});

import { describe, expect, it } from 'vitest';
import { CameraState } from '../../src/model/camera.ts';
import { describe as lineOf } from '../../src/phrases/describe.ts';
import { ClientMessage } from '../../src/protocol/socket.ts';
import { ofType, TableJob } from './table.ts';

const CAMERA = { frames: 5, belief: 0.9997 };
const reads = (text: string) =>
  ({ kind: 'words', seat: 'panel', via: 'button', text, camera: CAMERA }) as const;

describe('a number that a phone read from the display', () => {
  it('is taken like one that was said, read back, and stays marked in the log', () => {
    const job = TableJob.crewed();
    const facts = job.input(reads('140'));
    expect(facts.map(({ type }) => type).slice(0, 3)).toEqual(['said', 'reading', 'readback']);
    const [said] = ofType(facts, 'said');
    expect(said).toMatchObject({ text: '140', camera: CAMERA });
    expect(said && lineOf({ actor: 'panel', fact: said }, undefined)?.text).toBe(
      '140 (read by camera, 5 frames, 99.9 % sure)',
    );
  });

  const id = 'Zt7eC6GDJv7wbWtYkP4iy';
  const parsed = (more: object) =>
    ClientMessage.safeParse({ t: 'say', id, via: 'button', text: '47', camera: CAMERA, ...more }).success;
  it.each<[string, object, boolean]>([
    ['a number', {}, true],
    ['a number with a point and a sign', { text: '-4.70' }, true],
    ['a word', { text: 'accept' }, false],
    ['a number in words', { text: 'forty seven' }, false],
    ['two numbers', { text: '47 48' }, false],
    ['typed', { via: 'typed' }, false],
    ['heard', { via: 'voice', confidence: 1 }, false],
    ['of no frame', { camera: { ...CAMERA, frames: 0 } }, false],
    ['more than sure', { camera: { ...CAMERA, belief: 1.01 } }, false],
  ])('comes over the wire as %s: %j is %s', (_, more, ok) => expect(parsed(more)).toBe(ok));
});

describe('a phone that watches the meter', () => {
  it.each(CameraState.options)('says on both phones that it is %s, and stays in the log', (state) => {
    const job = TableJob.crewed();
    const facts = job.input({ kind: 'camera', seat: 'panel', state });
    expect(facts[0]).toEqual({ type: 'camera', seat: 'panel', state });
    expect(ofType(facts, 'notice')).toMatchObject([{ code: 'camera' }]);
  });

  it('does not speak for the crew: advice that ran out in silence stays silent', () => {
    const job = TableJob.crewed();
    job.wait(10 * 60_000);
    expect(job.state.instruction).toBeUndefined();
    job.input({ kind: 'camera', seat: 'panel', state: 'watching' });
    expect(job.state.instruction).toBeUndefined();
    job.say('panel', '140');
    expect(job.state.instruction).toBeDefined();
  });
});

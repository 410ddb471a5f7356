import { describe, expect, it } from 'vitest';
import type { Action, Addressee, Advice } from '../../src/model/advice.ts';
import type { AloneWay } from '../../src/model/alone.ts';
import type { Seat } from '../../src/model/facts.ts';
import { isMine } from '../../src/model/mine.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { ALONE_CAUTIONS } from '../../src/phrases/cautions.ts';
import { instructionText } from '../../src/phrases/instruct.ts';
import { isLeft } from '../../src/visit/state.ts';
import { ofType, TableJob } from './table.ts';

const meter = NEUTRAL_METERS[0];
if (!meter) throw new Error('no meter');
const setup = { site: 'Hall', pair: 'B2', meter, adjusters: NEUTRAL_ADJUSTERS };
const SITTER = { device: 'One phone', takeover: false, phone: '0000000a' } as const;

function alone(way: AloneWay): TableJob {
  const job = new TableJob();
  job.input({ kind: 'open', setup: { ...setup, alone: way } });
  return job;
}

describe('one person with one phone', () => {
  it('is in both seats as soon as the job is open, is told what alone means, and gets the first order', () => {
    const job = alone('walking');
    const facts = job.input({ kind: 'seated', seat: 'panel', ...SITTER });
    expect(ofType(facts, 'seated').map(({ seat, phone }) => [seat, phone])).toEqual([
      ['panel', SITTER.phone],
      ['emitter', SITTER.phone],
    ]);
    const [cautions] = ofType(facts, 'notice');
    for (const caution of ALONE_CAUTIONS) expect(cautions?.text).toContain(caution);
    expect(job.action).toBeDefined();
  });

  it('says that it has done an order for the emitter, and reads the meter, as the same phone', () => {
    const job = alone('walking');
    job.input({ kind: 'seated', seat: 'panel', ...SITTER });
    job.say('panel', 'done', job.state.instruction?.seq);
    job.wait(meter.settleMs);
    job.say('panel', '25', job.state.instruction?.seq);
    expect(job.state.reading?.reading).toEqual({ kind: 'value', value: 25 });
  });

  it('has left when its phone has left, and no order waits for an emitter that comes back', () => {
    const job = alone('walking');
    job.input({ kind: 'seated', seat: 'panel', ...SITTER });
    expect(isLeft(job.state)).toBe(false);
    job.input({ kind: 'link', seat: 'panel', online: false });
    expect(isLeft(job.state)).toBe(true);
    expect(job.state.held).toBe(false);
  });

  it('has four times as long for each order as a crew of two: it walks', () => {
    const lasts = (way?: AloneWay) => {
      const job = new TableJob();
      job.input({ kind: 'open', setup: { ...setup, ...(way && { alone: way }) } });
      job.input({ kind: 'seated', seat: 'panel', ...SITTER });
      if (way !== 'walking') job.input({ kind: 'seated', seat: 'emitter', ...SITTER });
      const { instruction } = job.state;
      return (instruction?.expiresAt ?? 0) - job.now;
    };
    expect(lasts('walking')).toBe(4 * lasts());
    expect(lasts('watching')).toBe(lasts());
  });
});

describe('one person with a second phone that watches the meter', () => {
  it('begins only when the second phone has joined', () => {
    const job = alone('watching');
    job.input({ kind: 'seated', seat: 'panel', ...SITTER });
    expect(job.state.seats.emitter).toBeUndefined();
    expect(job.state.instruction).toBeUndefined();
    job.input({ kind: 'seated', seat: 'emitter', ...SITTER, phone: '0000000b' });
    expect(job.state.instruction).toBeDefined();
  });
});

const advice = (to: Addressee, action: Action, rule = 'read'): Advice => ({
  to,
  action,
  rule,
  because: [],
  figures: {},
});
const READ = advice('panel', { kind: 'read' });
const TURN = advice('emitter', { kind: 'turn', axis: 'vertical', eighths: 2, reversal: false });
const ACCEPT = advice('panel', { kind: 'offer-accept' });

describe('whose order it is', () => {
  it.each<[string, Advice, Seat, AloneWay | undefined, boolean]>([
    ['to read, for two', READ, 'panel', undefined, true],
    ['to read, for two', READ, 'emitter', undefined, false],
    ['to turn, for two', TURN, 'panel', undefined, false],
    ['to turn, for two', TURN, 'emitter', undefined, true],
    ['to read, where a propped phone reads', READ, 'emitter', 'watching', false],
    ['to read, where a propped phone reads', READ, 'panel', 'watching', true],
    ['to accept, where a propped phone reads', ACCEPT, 'emitter', 'watching', true],
    ['to turn, where a propped phone reads', TURN, 'panel', 'watching', false],
    ['to read, on one phone', READ, 'panel', 'walking', true],
    ['to turn, on one phone', TURN, 'panel', 'walking', true],
  ])('an order %s: %j, at the %s, alone %s', (_, given, seat, way, mine) => {
    expect(isMine(given, seat, way)).toBe(mine);
  });
});

describe('the words for a person who walks', () => {
  const said = (given: Advice, way?: AloneWay) =>
    instructionText(given, { ...setup, ...(way && { alone: way }) }).say;
  const again = advice('panel', { kind: 'read' }, 'read-twice');
  const settle = advice('both', { kind: 'hold', reason: 'settling', until: 0 });
  const prove = advice('both', { kind: 'hold', reason: 'proving-steady', until: 0 });

  it.each([
    [READ, 'Go to the meter. Say what it shows.'],
    [again, 'Stay at the meter. Read it again.'],
    [settle, 'Hands off. Now go to the meter.'],
    [prove, 'Stay at the meter. Proving that it holds.'],
  ])('%j: %s', (given, say) => {
    expect(said(given, 'walking')).toBe(say);
    expect(say.split(' ').length).toBeLessThanOrEqual(8);
    expect(said(given, 'watching')).toBe(said(given));
  });

  it('does not call anybody at the panel', () => {
    expect(said(READ)).toContain('Panel');
    for (const given of [READ, again, settle, prove, TURN, ACCEPT])
      expect(said(given, 'walking')).not.toContain('Panel');
  });
});

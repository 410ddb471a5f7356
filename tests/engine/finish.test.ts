import { describe, expect, it } from 'vitest';
import { atTheEnd, blockingCheck, finished, holdSteady, offer, reflected } from '../../src/engine/finish.ts';
import { look } from '../../src/engine/view.ts';
import { Proof, proven } from './proven.ts';

const view = ({ search }: Proof) => look(search);
const newest = ({ seq }: Proof) => seq - 1;

describe('With the screws all is proven', () => {
  it.each([
    ['where only the blocking check, the hold and freshness are lacking', new Proof().brackets(), true],
    ['not where the beam is not bracketed', new Proof({ above: 7 }).brackets(), false],
    ['not where nothing was read', new Proof(), false],
  ])('%s', (_, proof, expected) => {
    expect(atTheEnd(proof.search, proof.at + 600_000)).toBe(expected);
  });
});

describe('Blocking the path is asked for', () => {
  it('once all is proven with the screws', () => {
    const proof = new Proof().brackets();
    expect(blockingCheck(view(proof), proof.at)?.advice).toMatchObject({
      rule: 'blocking-check',
      action: { kind: 'block' },
      because: [newest(proof)],
    });
  });

  it.each([
    ['before there is a settled reading', new Proof()],
    ['while a peak is not bracketed', new Proof({ above: 7 }).brackets()],
    ['once it has passed', proven()],
  ])('not %s', (_, proof) => {
    expect(blockingCheck(view(proof), proof.at)).toBeUndefined();
  });
});

describe('Light that stays while the path is blocked', () => {
  const blocked = (...readings: ('nothing' | number)[]) => {
    const proof = new Proof().brackets();
    const before = newest(proof);
    proof.say({ type: 'path', state: 'blocked' });
    for (const reading of readings) proof.reads(reading);
    proof.say({ type: 'path', state: 'clear' });
    proof.reads(proof.level);
    return { told: reflected(view(proof))?.advice, because: [before, newest(proof)] };
  };

  it('comes by a reflection: aim again', () => {
    const { told, because } = blocked(-14, -14);
    expect(told).toMatchObject({ rule: 'not-by-reflection', action: { kind: 're-aim' }, because });
  });

  it.each([
    ['it went to nothing', ['nothing']],
    ['nothing was read', []],
  ] as const)('is not said to where %s', (_, readings) => {
    expect(blocked(...readings).told).toBeUndefined();
  });
});

describe('The hold', () => {
  const held = (ms: number) => new Proof().brackets().blocks().holds(ms);

  it('lasts until ten seconds after the first reading', () => {
    const proof = held(4_000);
    const until = proof.at + 6_000;
    const figures = { held: 4, needed: 10 };
    expect(holdSteady(view(proof), until - 1)).toMatchObject({
      advice: {
        rule: 'hold-steady',
        action: { kind: 'hold', reason: 'proving-steady', until },
        because: [newest(proof)],
        figures,
      },
      wakeAt: until,
    });
    expect(holdSteady(view(proof), until)?.advice).toMatchObject({
      rule: 'hold-steady',
      action: { kind: 'read' },
      because: [newest(proof)],
      figures,
    });
  });

  it.each([
    [9_999, 'is not over'],
    [10_000, 'is over'],
  ])('with a reading that has stood for %i ms of ten seconds %s', (ms, says) => {
    const proof = held(ms);
    expect(holdSteady(view(proof), proof.at) === undefined).toBe(says === 'is over');
  });

  it('has not begun before there is a settled reading', () => {
    const proof = new Proof();
    expect(holdSteady(view(proof), proof.at)).toBeUndefined();
  });
});

describe('Acceptance is offered', () => {
  it('once nothing is lacking, with the entries it rests on: a side each, and the reading here', () => {
    const proof = proven();
    const { because, ...told } = offer(view(proof), proof.at)?.advice ?? { because: [] };
    expect(told).toMatchObject({ rule: 'offer-accept', action: { kind: 'offer-accept' }, to: 'panel' });
    expect(because).toHaveLength(5);
    expect(because.at(-1)).toBe(newest(proof));
  });

  it.each([
    ['while anything is lacking', new Proof().brackets().blocks().holds(9_999)],
    ['before there is a settled reading', new Proof()],
  ])('not %s', (_, proof) => {
    expect(offer(view(proof), proof.at)).toBeUndefined();
  });

  it('and after it nothing more is asked for', () => {
    const proof = proven();
    expect(finished(view(proof))).toBeUndefined();
    proof.say({ type: 'accept', reading: { kind: 'value', value: proof.level } });
    expect(finished(view(proof))?.advice).toMatchObject({ rule: 'finished', action: { kind: 'finished' } });
  });
});

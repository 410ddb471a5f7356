import { describe, expect, it } from 'vitest';
import {
  FRAME_MS,
  type Gate,
  type GateEffect,
  newGate,
  step,
  sureness,
  tooLoudHere,
} from '../../client/audio/gate.ts';

/** A place and a voice in it. */
class Place {
  gate: Gate = newGate();
  heard: GateEffect[] = [];

  constructor(readonly noise: number) {
    this.pass(2_000, 0.02, noise);
  }
  pass(ms: number, probability: number, db: number, speaking = false): this {
    for (let t = 0; t < ms; t += FRAME_MS) {
      const { gate, effect } = step(this.gate, { probability, db, speaking });
      this.gate = gate;
      if (effect) this.heard.push(effect);
    }
    return this;
  }
  quiet = (ms: number): this => this.pass(ms, 0.02, this.noise);
  speech = (ms: number, db = -25, probability = 0.95): this => this.pass(ms, probability, db);
  ours = (ms: number): this => this.pass(ms, 0.99, -12, true);
}

describe('talking without a button', () => {
  it('lets a sentence through, with its short pauses, and ends it after a longer one', () => {
    const place = new Place(-60).speech(600).quiet(400).speech(500);
    expect(place.heard).toEqual(['begin']);
    expect(place.quiet(1_000).heard).toEqual(['begin', 'end']);
  });

  it('throws away a knock and a cough', () => {
    expect(new Place(-60).speech(100).quiet(1_000).heard).toEqual(['begin', 'drop']);
  });

  it('never lets its own voice in, or the echo of it', () => {
    const place = new Place(-60).ours(3_000).speech(300);
    expect(place.heard).toEqual([]);
    expect(place.quiet(500).speech(600).quiet(1_000).heard).toEqual(['begin', 'end']);
  });

  it('throws away an utterance that its own voice interrupts', () => {
    expect(new Place(-60).speech(500).ours(500).quiet(2_000).heard).toEqual(['begin', 'drop']);
  });

  it('must be surer in a louder place', () => {
    expect(sureness(undefined)).toBe(sureness(-80));
    expect(sureness(-20)).toBeGreaterThan(sureness(-45));
    expect(new Place(-60).speech(600, -20, 0.7).heard).toEqual(['begin']);
    expect(new Place(-27).speech(600, -20, 0.7).heard).toEqual([]);
  });

  it('takes no sound for speech that is only as loud as the place', () => {
    expect(new Place(-40).speech(2_000, -40).heard).toEqual([]);
  });

  it('adapts to the new noise when a machine starts or stops', () => {
    const place = new Place(-60).pass(10_000, 0.05, -35);
    expect(place.gate.floor).toBeGreaterThan(-40);
    expect(place.pass(1_000, 0.05, -60).gate.floor).toBeLessThan(-57);
  });

  it('says when the place is too loud to hear numbers', () => {
    expect(tooLoudHere(new Place(-60).speech(800).gate)).toBe(false);
    expect(tooLoudHere(new Place(-30).speech(800, -24).gate)).toBe(true);
    expect(tooLoudHere(new Place(-18).gate)).toBe(true);
    expect(tooLoudHere(newGate())).toBe(false);
  });

  it('ends an utterance by itself before it gets too long', () => {
    expect(new Place(-60).speech(14_000).heard).toEqual(['begin', 'end', 'begin']);
  });
});

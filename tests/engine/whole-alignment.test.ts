import { describe, expect, it } from 'vitest';
import { randomPair } from '../../src/simulator/cases.ts';
import { CAREFUL } from '../../src/simulator/crew.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { runEngine } from '../bench/engine-run.ts';

describe('a whole alignment with a simulated crew', () => {
  it.each([11, 12, 13, 14, 15, 16, 17, 18])('ends at the peak, accepted on evidence (seed %i)', (seed) => {
    const rng = createRng(seed);
    const outcome = runEngine(randomPair(rng, { sideLobe: 0, reflection: 0 }), CAREFUL, rng);
    expect(outcome.accepted).toBe(true);
    expect(outcome.shortfall).toBeLessThan(0.3);
  });
});

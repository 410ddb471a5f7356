import { describe, expect, it } from 'vitest';
import { fitting } from '../../client/photos/fitting.ts';

const sizes = (width: number, height: number) => [...fitting({ width, height })];

describe('a photo is drawn anew', () => {
  it('at most 1600 pixels long, then coarser, then smaller, and keeps its shape', () => {
    const all = sizes(4000, 3000);
    expect(all[0]).toEqual({ width: 1600, height: 1200, quality: 0.82 });
    expect(all.map(({ width }) => width)).toEqual([...all.map(({ width }) => width)].sort((a, b) => b - a));
    for (const { width, height } of all) expect(width / height).toBeCloseTo(4 / 3, 2);
  });

  it('upright ones by their height', () => {
    expect(sizes(3000, 4000)[0]).toMatchObject({ width: 1200, height: 1600 });
  });

  it('never larger than it is', () => {
    for (const { width, height } of sizes(300, 200)) expect([width, height]).toEqual([300, 200]);
  });

  it('never of no height', () => {
    for (const { height } of sizes(40_000, 1)) expect(height).toBe(1);
  });
});

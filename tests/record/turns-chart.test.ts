import { describe, expect, it } from 'vitest';
import { alongAxis } from '../../src/charts/along.ts';
import type { LineStyle, Scene } from '../../src/charts/scene.ts';
import { smallTurnsScene } from '../../src/charts/small-turns-scene.ts';
import { turnsScene } from '../../src/charts/turns-scene.ts';
import type { Search } from '../../src/engine/search.ts';
import { AXES, type Axis } from '../../src/model/turns.ts';
import { KEYS, PEAK_UNKNOWN } from '../../src/phrases/charts.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { searchOf } from '../../src/visit/search.ts';
import { playedVisit, SETUP } from '../findings/site.ts';

const { series, state } = new VisitRecord({ entries: playedVisit() });
const sceneOf = (axis: Axis, search: Search | undefined): Scene => {
  const { scene } = turnsScene(series, alongAxis(series, search, axis), axis, SETUP.meter, 600);
  if (!scene) throw new Error(`nothing was read along the ${axis} adjuster`);
  return scene;
};
const linesOf = ({ parts }: Scene, ...styles: LineStyle[]): string[] =>
  parts.flatMap((part) => (part.kind === 'line' && styles.includes(part.style) ? [part.d] : []));
const keysOf = ({ keys }: Scene): string[] => keys.map(({ text }) => text);

describe.each(AXES)('readings along the %s adjuster', (axis) => {
  it('are not joined by straight lines where a curve is fitted', () => {
    const scene = sceneOf(axis, searchOf(state));
    expect(linesOf(scene, 'run', 'earlier')).toEqual([]);
    expect(keysOf(scene)).not.toContain(KEYS.earlier);
    expect(keysOf(scene)).toContain(KEYS.likely);
  });

  it('have one fitted curve, drawn without corners', () => {
    const fits = linesOf(sceneOf(axis, searchOf(state)), 'fit');
    expect(fits).toHaveLength(1);
    // In the path language of SVG, C is a cubic curve and L a straight line.
    expect(fits[0]).toMatch(/C/);
    expect(fits[0]).not.toMatch(/L/);
  });

  it('are joined where no curve is fitted', () => {
    const scene = sceneOf(axis, undefined);
    expect(linesOf(scene, 'fit')).toEqual([]);
    expect(linesOf(scene, 'run')).not.toEqual([]);
  });
});

describe.each(AXES)('the small chart of the %s adjuster', (axis) => {
  const size = { width: 160, height: 64 };
  const small = (search: Search | undefined) => smallTurnsScene(series, search, axis, SETUP.meter, size);
  const bars = (search: Search | undefined) =>
    small(search).scene.parts.flatMap((part) =>
      part.kind === 'area' && part.style === 'sure' ? [part.d] : [],
    );

  it('says where the peak is thought to be and how sure, and draws both', () => {
    expect(small(searchOf(state)).words).toMatch(/peak: [+−]\d[.]\d\d ± \d[.]\d\d turns$/);
    expect(linesOf(small(searchOf(state)).scene, 'peak')).toHaveLength(1);
    expect(bars(searchOf(state))).toHaveLength(1);
  });

  it('has its bar of sureness around its peak', () => {
    const [peak = ''] = linesOf(small(searchOf(state)).scene, 'peak');
    const at = Number(/^M([\d.]+),/.exec(peak)?.[1]);
    const [, from, wide] = /^M([\d.]+),[\d.]+h([\d.]+)/.exec(bars(searchOf(state))[0] ?? '') ?? [];
    expect(Number(from)).toBeLessThanOrEqual(at);
    expect(Number(from) + Number(wide)).toBeGreaterThanOrEqual(at);
  });

  it('claims no peak where none is fitted', () => {
    expect(small(undefined).words).toBe(PEAK_UNKNOWN);
    expect(linesOf(small(undefined).scene, 'peak', 'fit')).toEqual([]);
    expect(bars(undefined)).toEqual([]);
  });
});

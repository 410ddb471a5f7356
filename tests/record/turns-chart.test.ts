import { describe, expect, it } from 'vitest';
import type { LineStyle, Scene } from '../../src/charts/scene.ts';
import { turnsScene } from '../../src/charts/turns-scene.ts';
import type { Search } from '../../src/engine/search.ts';
import { AXES, type Axis } from '../../src/model/turns.ts';
import { KEYS } from '../../src/phrases/charts.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { searchOf } from '../../src/visit/search.ts';
import { playedVisit, SETUP } from '../findings/site.ts';

const { series, state } = new VisitRecord({ entries: playedVisit() });
const sceneOf = (axis: Axis, search: Search | undefined): Scene => {
  const { scene } = turnsScene(series, search, axis, SETUP.meter, 600);
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

import { describe, expect, it, vi } from 'vitest';
import { ENGLISH } from '../../src/grammar/grammar.ts';
import { sentences, wordGraph } from '../../src/grammar/graph.ts';
import pages from '../../vite.config.ts';
import { graphInside } from '../../vite.graph.ts';
import server from '../../vite.server.config.ts';

/** Says "go", "up", "go on" or "go up". */
const SMALL = vi.hoisted(() => ({
  start: 0,
  words: ['go', 'on', 'up'],
  lists: [[0], [1, 2], [2]],
  edges: ['0 1 2 2', '1 2', ''],
  ends: [1, 2],
}));
vi.mock('../../src/grammar/made.ts', () => ({ MADE: SMALL }));

const load = graphInside.load as unknown as (id: string) => string | undefined;

describe('the word graph that a build holds', () => {
  it('is the one that its own sources make', async () => {
    const source = load('/anywhere/src/grammar/made.ts') ?? '';
    const { MADE } = await import(`data:text/javascript,${encodeURIComponent(source)}`);
    expect(MADE.edges.length).toBeGreaterThan(1_000);
    expect(MADE).toEqual(sentences());
    expect(load('/anywhere/src/grammar/graph.ts')).toBeUndefined();
  });

  it("is in the server's programs, and in the phone's own recogniser", () => {
    expect((server as { plugins: unknown[] }).plugins).toContain(graphInside);
    expect((pages as { worker: { plugins(): unknown[] } }).worker.plugins()).toContain(graphInside);
  });

  it('is read in place of making one', () => {
    const graph = wordGraph();
    expect([graph.start, graph.size]).toEqual([0, 3]);
    expect([0, 1, 2].map((place) => [...graph.next(place)])).toEqual([
      [
        ['go', 1],
        ['up', 2],
      ],
      [
        ['on', 2],
        ['up', 2],
      ],
      [],
    ]);
    expect([0, 1, 2].map(graph.ends)).toEqual([false, true, true]);
    expect(() => graph.next(3)).toThrow(RangeError);
  });

  it('is for all sentences of English alone', () => {
    expect(wordGraph('number').size).toBeGreaterThan(3);
    const yes = {
      fillers: new Set<string>(),
      rules: { sentence: ENGLISH.rules.yes },
    } as unknown as typeof ENGLISH;
    expect([...wordGraph('sentence', yes).next(0).keys()]).not.toContain('go');
  });
});

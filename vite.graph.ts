import type { Plugin } from 'vite';
import { sentences } from './src/grammar/graph.ts';

const MADE = /[/]src[/]grammar[/]made[.]ts$/;

/**
 * The word graph, made once in the build instead of at every start. What is built holds the grammar and its graph side by side, from
 * the same sources, so one is never older than the other.
 */
export const graphInside: Plugin = {
  name: 'word-graph',
  load: (id) =>
    MADE.test(id)
      ? `export const MADE = JSON.parse(${JSON.stringify(JSON.stringify(sentences()))});`
      : undefined,
};

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { preloadsFor } from '../../server/http/page-files.ts';

const folder = mkdtempSync(join(tmpdir(), 'ladderline-pages-'));
afterAll(() => rmSync(folder, { recursive: true }));

const fetched = (module: string): string[] =>
  [...preloadsFor(folder, module).matchAll(/href="\/([^"]+)"/g)].map(([, file = '']) => file);

// In the form in which Vite writes it (docs of its option build.manifest).
const MANIFEST = {
  'index.html': { file: 'main.js', isEntry: true, css: ['main.css'] },
  'site/board-page.tsx': { file: 'board.js', imports: ['index.html', '_rows.js'], css: ['board.css'] },
  '_rows.js': { file: 'rows.js', name: 'rows', imports: ['index.html'] },
  '_record-page.js': { file: 'record.js', name: 'record-page', imports: ['_rows.js'] },
};

describe('what a browser is told to fetch with a page', () => {
  it('is nothing while the bundler has left no word', () => {
    expect(preloadsFor(folder, 'site/board-page.tsx')).toBe('');
  });

  it('is its code, with all that this needs, once each', () => {
    mkdirSync(join(folder, '.vite'));
    writeFileSync(join(folder, '.vite', 'manifest.json'), JSON.stringify(MANIFEST));
    expect(fetched('site/board-page.tsx')).toEqual([
      'board.js',
      'main.js',
      'rows.js',
      'board.css',
      'main.css',
    ]);
  });

  it('is found under the name of its file where another page uses it as well', () => {
    expect(fetched('review/record-page.tsx')).toEqual(['record.js', 'rows.js', 'main.js', 'main.css']);
  });

  it('is nothing of its own for a page that stands in the first file', () => {
    expect(fetched('home/home-page.tsx')).toEqual([]);
  });
});

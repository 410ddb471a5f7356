import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { preloadsFor } from '../../server/http/page-files.ts';

const folder = mkdtempSync(join(tmpdir(), 'ladderline-pages-'));
afterAll(() => rmSync(folder, { recursive: true }));

const fetched = (module: string): string[] =>
  [...preloadsFor(folder, module).matchAll(/href="\/([^"]+)"/g)].map(([, file = '']) => file);

// In the form that Vite writes (docs of its option build.manifest).
const MANIFEST = {
  'index.html': { file: 'main.js', isEntry: true, css: ['main.css'] },
  'site/board-page.tsx': { file: 'board.js', imports: ['index.html', '_rows.js'], css: ['board.css'] },
  '_rows.js': { file: 'rows.js', name: 'rows', imports: ['index.html'] },
  '_seals.js': { file: 'seals.js', name: 'seals', imports: ['_rows.js'] },
};
// As vite.config.ts adds it.
const PAGES = {
  'site/board-page.tsx': 'board.js',
  'review/record-page.tsx': 'seals.js',
  'home/home-page.tsx': 'main.js',
};

describe('what a browser fetches together with a page', () => {
  it('is nothing when the bundler wrote no manifest', () => {
    expect(preloadsFor(folder, 'site/board-page.tsx')).toBe('');
  });

  it('is the code of the page and all that this code needs, each once', () => {
    mkdirSync(join(folder, '.vite'));
    writeFileSync(join(folder, '.vite', 'manifest.json'), JSON.stringify(MANIFEST));
    writeFileSync(join(folder, '.vite', 'pages.json'), JSON.stringify(PAGES));
    expect(fetched('site/board-page.tsx')).toEqual([
      'board.js',
      'main.js',
      'rows.js',
      'board.css',
      'main.css',
    ]);
  });

  it('is found where the bundler put the page into the file of something else', () => {
    expect(fetched('review/record-page.tsx')).toEqual(['seals.js', 'rows.js', 'main.js', 'main.css']);
  });

  it('is the first file alone for a page that is part of it, and nothing for one that nobody knows', () => {
    expect(fetched('home/home-page.tsx')).toEqual(['main.js', 'main.css']);
    expect(fetched('home/none.tsx')).toEqual([]);
  });
});

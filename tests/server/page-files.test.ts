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
  '_record-page.js': { file: 'record.js', name: 'record-page', imports: ['_rows.js'] },
};

describe('what a browser fetches together with a page', () => {
  it('is nothing when the bundler wrote no manifest', () => {
    expect(preloadsFor(folder, 'site/board-page.tsx')).toBe('');
  });

  it('is the code of the page and all that this code needs, each once', () => {
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

  it('is found by the name of its file when another page uses that file too', () => {
    expect(fetched('review/record-page.tsx')).toEqual(['record.js', 'rows.js', 'main.js', 'main.css']);
  });

  it('is nothing more for a page that is part of the first file', () => {
    expect(fetched('home/home-page.tsx')).toEqual([]);
  });
});

import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig } from 'vite';
import { HEARING_PATHS } from './client/offline/asked.ts';
import { packed } from './vite.packed.ts';
import { onwarn } from './vite.warnings.ts';

const PAGES = 'dist/client';

/** Not part of any page: what the bundler writes for the server, the licences, the worker itself, packed copies. */
const APART = /^(?:[.]vite[/]|LICENSE|NOTICE|service-worker[.]js)|[.](?:br|gz)$/;

/** Every built file that a page may need, with a hash of what is in it where its name has none. */
function pageFiles(): { url: string; revision: string | null }[] {
  if (!existsSync(PAGES)) return [];
  return readdirSync(PAGES, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(PAGES.length + 1))
    .filter((file) => !APART.test(file) && !HEARING_PATHS.test(`/${file}`))
    .sort()
    .map((file) => {
      const revision = createHash('sha256')
        .update(readFileSync(join(PAGES, file)))
        .digest('hex');
      return {
        url: file === 'index.html' ? '/' : `/${file}`,
        revision: file.startsWith('assets/') ? null : revision.slice(0, 16),
      };
    });
}

/**
 * The service worker, built after the pages: it holds the list of their files. It is one file that imports nothing,
 * because not every browser takes modules there.
 */
export default defineConfig({
  publicDir: false,
  plugins: [packed(PAGES)],
  define: { PAGE_FILES: JSON.stringify(pageFiles()), 'process.env.NODE_ENV': '"production"' },
  build: {
    outDir: PAGES,
    emptyOutDir: false,
    target: 'es2020',
    lib: { entry: 'client/offline/service-worker.ts', formats: ['iife'], name: 'worker' },
    rollupOptions: { onwarn, output: { entryFileNames: 'service-worker.js' } },
  },
});

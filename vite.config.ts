import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';
import { chunkOf } from './vite.chunks.ts';
import { graphInside } from './vite.graph.ts';
import { onwarn } from './vite.warnings.ts';

/** The licence and the notices go wherever the pages go: most of the packages in them ask for it. */
const notices: Plugin = {
  name: 'notices',
  generateBundle() {
    for (const file of ['LICENSE', 'NOTICE']) {
      const source = readFileSync(new URL(file, import.meta.url), 'utf8');
      this.emitFile({ type: 'asset', fileName: `${file}.txt`, source });
    }
  },
};

const CLIENT = fileURLToPath(new URL('client', import.meta.url));

/**
 * Beside the bundler's manifest: which file the code of each page is in. The manifest names a page only where the page has
 * a file of its own, and the bundler puts small ones together as it likes.
 */
const pages: Plugin = {
  name: 'pages',
  generateBundle(_, bundle) {
    const files = Object.values(bundle).flatMap((chunk) =>
      chunk.type === 'chunk'
        ? chunk.moduleIds
            .filter((id) => id.endsWith('-page.tsx'))
            .map((id) => [relative(CLIENT, id), chunk.fileName])
        : [],
    );
    const source = JSON.stringify(Object.fromEntries(files), undefined, 2);
    this.emitFile({ type: 'asset', fileName: '.vite/pages.json', source });
  },
};

/** The phones' and the desk's pages: one small entry, bundled from `client/`. */
export default defineConfig({
  root: 'client',
  plugins: [notices, pages],
  // The phone's own recogniser is a worker, and these have plugins of their own.
  worker: { plugins: () => [graphInside] },
  build: {
    outDir: '../dist/client',
    emptyOutDir: true,
    target: 'es2020',
    // From it the server knows what each page needs, see server/http/page-files.ts.
    manifest: true,
    // Each file is a request: a dozen of a few kilobytes make a page wait longer than one of thirty.
    rollupOptions: { onwarn, output: { manualChunks: chunkOf, experimentalMinChunkSize: 3_000 } },
  },
  esbuild: { jsx: 'automatic', jsxImportSource: 'preact' },
});

import { defineConfig } from 'vite';
import { onwarn } from './vite.warnings.ts';

/** The phones' and the desk's pages: one small entry, bundled from `client/`. */
export default defineConfig({
  root: 'client',
  build: {
    outDir: '../dist/client',
    emptyOutDir: true,
    target: 'es2020',
    // From it the server knows what each page needs, see server/http/page-files.ts.
    manifest: true,
    // Each file is a request: a dozen of a few kilobytes make a page wait longer than one of thirty.
    rollupOptions: { onwarn, output: { experimentalMinChunkSize: 30_000 } },
  },
  esbuild: { jsx: 'automatic', jsxImportSource: 'preact' },
});

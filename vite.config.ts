import { defineConfig } from 'vite';

/** The phones' and the desk's pages: one small entry, bundled from `client/`. */
export default defineConfig({
  root: 'client',
  build: { outDir: '../dist/client', emptyOutDir: true, target: 'es2020' },
  esbuild: { jsx: 'automatic', jsxImportSource: 'preact' },
});

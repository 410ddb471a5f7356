import { defineConfig } from 'vitest/config';
import { TESTS, TOO_SLOW } from './held.ts';

export default defineConfig({
  esbuild: { jsx: 'automatic', jsxImportSource: 'preact' },
  test: { include: [...TESTS], exclude: [...TOO_SLOW] },
});

import { defineConfig } from 'vitest/config';

const BROWSER = 'tests/e2e/**/*.test.ts';

export default defineConfig({
  esbuild: { jsx: 'automatic', jsxImportSource: 'preact' },
  test: {
    testTimeout: 30_000,
    // A browser takes its time to close on a busy machine.
    hookTimeout: 60_000,
    pool: 'forks',
    reporters: ['default', './tests/left-out.ts'],
    // What a project sets up is done only when one of its tests runs.
    projects: [
      { extends: true, test: { name: 'browser', include: [BROWSER], globalSetup: './tests/e2e/build.ts' } },
      {
        extends: true,
        test: { name: 'node', include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'], exclude: [BROWSER] },
      },
    ],
  },
});

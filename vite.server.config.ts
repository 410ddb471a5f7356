import { defineConfig } from 'vite';

/** The server and its worker, bundled for Node; packages stay in `node_modules`. */
export default defineConfig({
  build: {
    ssr: true,
    outDir: 'dist/server',
    emptyOutDir: true,
    target: 'node20',
    rollupOptions: {
      input: {
        main: 'server/main.ts',
        'speech-worker': 'server/speech/worker.ts',
        'voice-worker': 'server/voice/worker.ts',
        demo: 'server/demo/main.ts',
        verify: 'server/verify/main.ts',
      },
    },
  },
});

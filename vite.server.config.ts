import { defineConfig } from 'vite';
import { graphInside } from './vite.graph.ts';
import { onwarn } from './vite.warnings.ts';

/** The server, its speech engine and its other programs, bundled for Node; packages stay in `node_modules`. */
export default defineConfig({
  plugins: [graphInside],
  build: {
    ssr: true,
    outDir: 'dist/server',
    emptyOutDir: true,
    target: 'node20',
    rollupOptions: {
      onwarn,
      input: {
        main: 'server/main.ts',
        'speech-engine': 'server/speech/engine-process.ts',
        'speech-service': 'server/speech/serve-main.ts',
        'rules-worker': 'server/jobs/rules-worker.ts',
        'store-worker': 'server/store/store-worker.ts',
        'report-worker': 'server/report/worker.ts',
        'voice-worker': 'server/voice/worker.ts',
        demo: 'server/demo/main.ts',
        verify: 'server/verify/main.ts',
        backup: 'server/backup/backup-main.ts',
        restore: 'server/backup/restore-main.ts',
        copy: 'server/copy/copy-main.ts',
        export: 'server/export/export-main.ts',
        forget: 'server/forget/forget-main.ts',
        firm: 'server/firms/firm-main.ts',
        account: 'server/backup/account-main.ts',
        passphrase: 'server/backup/passphrase-main.ts',
      },
    },
  },
});

import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

const WORTH_IT = /[.](?:js|css|svg|txt|webmanifest|wasm)$/;
/** Above this the best compression takes many seconds, and saves little. */
const LARGE_BYTES = 200_000;

/** Beside each file of `folder` its packed copies: the server sends these to browsers that take them. */
export const packed = (folder: string): Plugin => ({
  name: 'packed',
  closeBundle() {
    for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
      const file = join(folder, name);
      if (!WORTH_IT.test(name) || name.startsWith('.vite') || !statSync(file).isFile()) continue;
      const text = readFileSync(file);
      writeFileSync(`${file}.gz`, gzipSync(text, { level: 9 }));
      if (text.length > LARGE_BYTES) continue;
      const params = { [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY };
      writeFileSync(`${file}.br`, brotliCompressSync(text, { params }));
    }
  },
});

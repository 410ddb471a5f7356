import { closeSync, fsyncSync, openSync, unlinkSync, writeSync } from 'node:fs';
import { join } from 'node:path';

/** Another program on the same machine, until it is killed: it writes and syncs, or only keeps a processor busy. */
const [what, folder = '.'] = process.argv.slice(2);
const BLOCK = Buffer.alloc(1024 * 1024, 'x');
/** The file is begun again after so many blocks. */
const BLOCKS = 64;

if (what === 'disk') {
  const file = openSync(join(folder, 'another-program'), 'w');
  unlinkSync(join(folder, 'another-program'));
  process.on('exit', () => closeSync(file));
  for (let i = 0; ; i = (i + 1) % BLOCKS) {
    writeSync(file, BLOCK, 0, BLOCK.length, i * BLOCK.length);
    fsyncSync(file);
  }
}
for (;;);

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
const read = (name: string): Buffer => readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));

/** An open typeface with the signs for turns and the letters of most names in the world. */
export type Fonts = { readonly [face in 'plain' | 'bold' | 'mono']: Buffer };

/** @throws when the package is not installed */
export const loadFonts = (): Fonts => ({
  plain: read('DejaVuSansCondensed'),
  bold: read('DejaVuSansCondensed-Bold'),
  mono: read('DejaVuSansMono'),
});

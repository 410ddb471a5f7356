import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { create, type Font } from 'fontkit';

const require = createRequire(import.meta.url);
const read = (name: string): Font =>
  create(readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`))) as Font;

export type Face = 'plain' | 'bold' | 'mono';
/** An open typeface with the signs for turns and the letters of most names in the world. */
export type Fonts = { readonly [face in Face]: Font };

/** @throws when the package is not installed */
export const loadFonts = (): Fonts => ({
  plain: read('DejaVuSansCondensed'),
  bold: read('DejaVuSansCondensed-Bold'),
  mono: read('DejaVuSansMono'),
});

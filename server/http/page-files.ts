import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod/mini';

/** What the bundler writes about a file, and which file each page is in (vite.config.ts). */
const Chunk = z.object({
  file: z.string(),
  imports: z._default(z.array(z.string()), []),
  css: z._default(z.array(z.string()), []),
});
const Manifest = z.record(z.string(), Chunk);
const Pages = z.record(z.string(), z.string());

/**
 * Links for the head of a page, so that the browser fetches the code of `module` at once, and not only after the
 * first file has run. Empty when the bundler wrote nothing of it: the page works without them.
 */
export function preloadsFor(folder: string, module: string): string {
  const manifest = written(folder, 'manifest.json', Manifest) ?? {};
  const own = written(folder, 'pages.json', Pages)?.[module];
  const files = new Set<string>();
  const styles = new Set<string>();
  const add = (name: string): void => {
    const chunk = manifest[name];
    if (!chunk || files.has(chunk.file)) return;
    files.add(chunk.file);
    for (const style of chunk.css) styles.add(style);
    chunk.imports.forEach(add);
  };
  const page = Object.keys(manifest).find((key) => manifest[key]?.file === own);
  if (page) add(page);
  return [
    ...[...files].map((file) => `<link rel="modulepreload" href="/${file}">`),
    ...[...styles].map((file) => `<link rel="preload" as="style" href="/${file}">`),
  ].join('');
}

function written<T>(folder: string, name: string, form: z.ZodMiniType<T>): T | undefined {
  try {
    return form.parse(JSON.parse(readFileSync(join(folder, '.vite', name), 'utf8')));
  } catch {
    return undefined;
  }
}

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod/mini';

/** What the bundler writes about a module: its file, and what that file needs. */
const Chunk = z.object({
  file: z.string(),
  name: z.optional(z.string()),
  imports: z._default(z.array(z.string()), []),
  css: z._default(z.array(z.string()), []),
});
const Manifest = z.record(z.string(), Chunk);

/**
 * Links for the head of a page, so that the browser fetches the code of `module` at once, and not only after the
 * first file has run. Empty when the bundler's manifest is missing: the page works without them.
 */
export function preloadsFor(folder: string, module: string): string {
  const manifest = readManifest(folder);
  const files = new Set<string>();
  const styles = new Set<string>();
  const add = (name: string): void => {
    const chunk = manifest[name];
    if (!chunk || files.has(chunk.file)) return;
    files.add(chunk.file);
    for (const style of chunk.css) styles.add(style);
    chunk.imports.forEach(add);
  };
  add(keyOf(manifest, module));
  return [
    ...[...files].map((file) => `<link rel="modulepreload" href="/${file}">`),
    ...[...styles].map((file) => `<link rel="preload" as="style" href="/${file}">`),
  ].join('');
}

/** When another page uses this one too, the bundler puts it in a shared file, listed under that file's name. */
function keyOf(manifest: z.output<typeof Manifest>, module: string): string {
  if (manifest[module]) return module;
  const name = module.replace(/^.*\//, '').replace(/\.tsx$/, '');
  return Object.keys(manifest).find((key) => manifest[key]?.name === name) ?? module;
}

function readManifest(folder: string): z.output<typeof Manifest> {
  try {
    return Manifest.parse(JSON.parse(readFileSync(join(folder, '.vite', 'manifest.json'), 'utf8')));
  } catch {
    return {};
  }
}

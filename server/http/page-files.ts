import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

/** What the bundler says of a module: the file it went into, and what that file needs. */
const Chunk = z.object({
  file: z.string(),
  name: z.string().optional(),
  imports: z.array(z.string()).default([]),
  css: z.array(z.string()).default([]),
});
const Manifest = z.record(z.string(), Chunk);

/**
 * Links in the head of a page that have the browser fetch the code of `module` at once, and not only when the
 * first file has run and asks for it. Nothing where the bundler left no word of it: the page comes all the same.
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

/** A page that another one uses as well goes into a shared file, which is listed under its own name. */
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

import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { HttpBindings } from '@hono/node-server';
import { serveStatic } from '@hono/node-server/serve-static';
import { Hono } from 'hono';
import { NO_MODEL_FILE } from '../../src/phrases/bad-requests.ts';
import { LETTER_FILES, openFolder } from './model-folder.ts';

const ONE_DAY_S = 24 * 3600;

/** The speech model's files, for phones that recognise speech themselves. Nothing else of the folder. */
export function modelFiles(folder: string): Hono<{ Bindings: HttpBindings }> {
  const app = new Hono<{ Bindings: HttpBindings }>();
  app.notFound((c) => c.text(NO_MODEL_FILE, 404));
  // A phone hears by the English sentences alone.
  if (!hearsEnglish(folder)) return app;
  const serve = serveStatic<{ Bindings: HttpBindings }>({
    root: folder,
    rewriteRequestPath: (path) => path.replace(/^\/speech-model/, ''),
    onFound: (_, c) => c.header('Cache-Control', `public, max-age=${ONE_DAY_S}`),
  });
  let listed: ReturnType<typeof listOf> | undefined;
  app.get('/files.json', async (c) => {
    listed ??= listOf(folder);
    return c.json(await listed, 200, { 'Cache-Control': 'no-cache' });
  });
  for (const file of LETTER_FILES) app.get(`/${file}`, serve);
  return app;
}

function hearsEnglish(folder: string): boolean {
  try {
    return openFolder(folder).language === undefined;
  } catch {
    // Not all of a model is there: what is there is given, and the phone says what it lacks.
    return true;
  }
}

/** The files that are there, each with a hash of its contents: by it a phone knows whether it has them already. */
async function listOf(folder: string): Promise<{ url: string; revision: string }[]> {
  const listed = await Promise.all(
    LETTER_FILES.map(async (file) => {
      const bytes = await readFile(join(folder, file)).catch(() => undefined);
      if (!bytes) return [];
      return [{ url: `/speech-model/${file}`, revision: createHash('sha256').update(bytes).digest('hex') }];
    }),
  );
  return listed.flat();
}

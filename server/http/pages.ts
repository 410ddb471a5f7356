import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { HttpBindings } from '@hono/node-server';
import { serveStatic } from '@hono/node-server/serve-static';
import { Hono } from 'hono';
import { SCREENS } from '../../client/browser/screens.ts';
import { NO_PAGE, NOT_BUILT } from '../../src/phrases/no-page.ts';
import { noticePage } from './notice.ts';
import { preloadsFor } from './page-files.ts';

const ONE_YEAR_S = 365 * 24 * 3600;

/** The built pages of `folder`. */
export function pages(folder: string): Hono<{ Bindings: HttpBindings }> {
  const app = new Hono<{ Bindings: HttpBindings }>();
  app.use(async (c, next) => {
    await next();
    if (c.res.status !== 200) return;
    const hashed = c.req.path.startsWith('/assets/');
    c.header('Cache-Control', hashed ? `public, max-age=${ONE_YEAR_S}, immutable` : 'no-cache');
  });

  const index = (): string | undefined => {
    try {
      return readFileSync(join(folder, 'index.html'), 'utf8');
    } catch {
      return undefined;
    }
  };
  for (const { path, file } of Object.values(SCREENS)) {
    app.get(path, (c) => {
      const page = index();
      return page
        ? c.html(page.replace('</head>', `${preloadsFor(folder, file)}</head>`))
        : c.html(noticePage(NOT_BUILT), 503);
    });
  }
  // What the bundler writes for the server (`.vite/`) lies among the pages, and is no page.
  app.use(async (c, next) => (isHidden(c.req.path) ? c.notFound() : next()));
  // `serveStatic` warns on the console when the folder is missing; the pages above say it better.
  if (existsSync(folder)) app.use(serveStatic({ root: folder, precompressed: true }));
  app.notFound((c) => {
    // A person gets our own page, which says so in their language; what asks for a file gets a short answer.
    const page = isForPerson(c.req.path, c.req.header('Accept')) ? index() : undefined;
    return c.html(page ?? noticePage(NO_PAGE), 404);
  });
  return app;
}

/** Whether a browser wants a page to show: files of pages and hidden ones are never pages. */
const isForPerson = (path: string, accept = ''): boolean =>
  accept.includes('text/html') && !path.startsWith('/assets/') && !isHidden(path);

/** Whether a part of the path begins with a dot, written plainly or as `%2e`. A path that is no text counts as hidden. */
function isHidden(path: string): boolean {
  try {
    return decodeURIComponent(path)
      .split(/[/\\]/)
      .some((part) => part.startsWith('.'));
  } catch {
    return true;
  }
}

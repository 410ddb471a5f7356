/// <reference lib="webworker" />
import { createHandlerBoundToURL, precacheAndRoute } from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';
import { SCREENS } from '../browser/screens.ts';
import { HEARING_PATHS, type Request } from './asked.ts';
import { keep, keptFile } from './kept-files.ts';

/**
 * Runs beside the pages, and gives them out when there is no link: the pages themselves, and what a phone needs to
 * hear by itself. Nothing under `/api` comes through here: an answer of the server is never older than it looks.
 */

declare const self: ServiceWorkerGlobalScope;
/** Put in by the build: every file of the pages, with a hash of what is in it. */
declare const PAGE_FILES: { url: string; revision: string | null }[];

precacheAndRoute(PAGE_FILES);
const screens = Object.values(SCREENS).map(({ path }) => new RegExp(`^${path}/?(?:[?].*)?$`));
registerRoute(new NavigationRoute(createHandlerBoundToURL('/'), { allowlist: screens }));

registerRoute(
  ({ url }) => url.origin === location.origin && HEARING_PATHS.test(url.pathname),
  async ({ request, url }) => (await keptFile(url.pathname)) ?? fetch(request),
);

// The first pages to open are kept at once, not only after the next load.
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

self.addEventListener('message', (event) => {
  const { data } = event as { data: Request };
  if (data.do === 'take-over') event.waitUntil(self.skipWaiting());
  if (data.do === 'keep') event.waitUntil(keep(data.files));
});

import { type Given, SCREENS, type ScreenName } from './screens.ts';

/** Where an address leads. */
export type Route =
  | { kind: 'screen'; name: ScreenName; parts: Readonly<Record<string, string>> }
  /** A part that the screen needs is missing. */
  | { kind: 'cut-short' }
  | { kind: 'unknown' };

export function routeOf(pathname: string, hash: string): Route {
  const path = pathname.replace(/\/+$/, '') || '/';
  const name = NAMES.find((each) => SCREENS[each].path === path);
  if (!name) return { kind: 'unknown' };
  const texts = decode(hash.replace(/^#/, '')).split('/');
  const { needs, may } = SCREENS[name];
  if (needs.some((_, i) => !texts[i])) return { kind: 'cut-short' };
  const parts = Object.fromEntries([...needs, ...may].map((part, i) => [part, texts[i] ?? '']));
  return { kind: 'screen', name, parts };
}

const NAMES = Object.keys(SCREENS) as ScreenName[];

/** The address of a screen, from the root of this server. */
export function linkTo<S extends ScreenName>(name: S, parts: Given<S>): string {
  const { path, needs, may } = SCREENS[name];
  const given: Partial<Record<string, string>> = parts;
  const texts = [...needs, ...may].flatMap((part) => given[part] ?? []);
  return texts.length > 0 ? `${path}#${texts.join('/')}` : path;
}

function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** Goes to another screen without loading the app again. */
export function go(path: string): void {
  history.pushState(null, '', path);
  dispatchEvent(new PopStateEvent('popstate'));
}

/** Follows a link inside the app. A click with a modifier key is left to the browser. */
export function follow(event: MouseEvent): void {
  if (event.metaKey || event.ctrlKey || event.shiftKey) return;
  event.preventDefault();
  const { pathname, hash } = new URL((event.currentTarget as HTMLAnchorElement).href);
  go(pathname + hash);
}

/** Where in the app an address leads. Secrets travel in the fragment, which no server sees. */
export type Route =
  | { page: 'home' }
  | { page: 'join'; code: string }
  /** `fresh`: a new job is wanted although this device sits in one. */
  | { page: 'panel'; fresh: boolean }
  | { page: 'emitter' }
  | { page: 'watch'; token: string }
  /** The report of what the token opens: a job, or a site; with `job`, of that visit's pair alone. */
  | { page: 'report'; token: string; job: string }
  | { page: 'site-new' }
  /** The pages of a site are opened with its desk's token, or its watchers'. */
  | { page: 'site'; token: string }
  | { page: 'site-import'; token: string }
  /** The plan of a pair; without `pair`, of a new one. */
  | { page: 'site-plan'; token: string; pair: string }
  /** The record of one visit. */
  | { page: 'site-pair'; token: string; job: string }
  | { page: 'unknown' };

export function routeOf(pathname: string, hash: string): Route {
  const fragment = decode(hash.replace(/^#/, ''));
  switch (pathname.replace(/\/+$/, '') || '/') {
    case '/':
      return { page: 'home' };
    case '/join':
      return { page: 'join', code: fragment };
    case '/panel':
      return { page: 'panel', fresh: fragment === 'new' };
    case '/emitter':
      return { page: 'emitter' };
    case '/watch':
      return { page: 'watch', token: fragment };
    case '/report': {
      const [token, job] = halves(fragment);
      return { page: 'report', token, job };
    }
    case '/site/new':
      return { page: 'site-new' };
    case '/site':
      return { page: 'site', token: fragment };
    case '/site/import':
      return { page: 'site-import', token: fragment };
    case '/site/plan': {
      const [token, pair] = halves(fragment);
      return { page: 'site-plan', token, pair };
    }
    case '/site/pair': {
      const [token, job] = halves(fragment);
      return { page: 'site-pair', token, job };
    }
    default:
      return { page: 'unknown' };
  }
}

/** "TOKEN/REST": neither holds a slash. */
function halves(fragment: string): [string, string] {
  const [token = '', rest = ''] = fragment.split('/');
  return [token, rest];
}

function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** Goes to another page of the app without loading it again. */
export function go(path: string): void {
  history.pushState(null, '', path);
  dispatchEvent(new PopStateEvent('popstate'));
}

/** Follows a link inside the app; a click with a modifier key stays the browser's. */
export function follow(event: MouseEvent): void {
  if (event.metaKey || event.ctrlKey || event.shiftKey) return;
  event.preventDefault();
  const { pathname, hash } = new URL((event.currentTarget as HTMLAnchorElement).href);
  go(pathname + hash);
}

/** Where in the app an address leads. Secrets travel in the fragment, which no server sees. */
export type Route =
  | { page: 'home' }
  | { page: 'join'; code: string }
  /** `fresh`: a new job is wanted although this device sits in one. */
  | { page: 'panel'; fresh: boolean }
  | { page: 'emitter' }
  | { page: 'watch'; token: string }
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
    default:
      return { page: 'unknown' };
  }
}

function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** Goes to another page of the app without loading it anew. */
export function go(path: string): void {
  history.pushState(null, '', path);
  dispatchEvent(new PopStateEvent('popstate'));
}

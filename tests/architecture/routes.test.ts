import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type ApiDeps, api } from '../../server/api.ts';
import { LIMITS } from '../../server/guard/limits.ts';
import { HeavyWork } from '../../server/guard/turns.ts';
import { Entrance } from '../../server/http/entrance.ts';
import { ROUTES, type Route } from '../../src/protocol/routes.ts';

const doc = readFileSync('docs/protocol.md', 'utf8');
const routes: Route[] = Object.values(ROUTES);

describe('the table of routes', () => {
  it('holds every address that the server answers, and no other', () => {
    const notary = { key: { fingerprint: '' } };
    const entrance = new Entrance(LIMITS, undefined, undefined);
    const deps = { limits: LIMITS, heavy: new HeavyWork(LIMITS), notary, entrance } as ApiDeps;
    const { routes: registered } = api(deps);
    const answered = registered.filter(({ method }) => method !== 'ALL');
    const told = (all: readonly { method: string; path: string }[]) =>
      all.map(({ method, path }) => `${method.toUpperCase()} ${path}`).sort();
    expect(told(answered)).toEqual(told(routes));
  });

  it.each(routes)('has $method $path in docs/protocol.md', ({ path }) => {
    expect(doc).toMatch(new RegExp(`/api${path.replaceAll('.', '\\.')}[^\\w/.-]`));
  });
});

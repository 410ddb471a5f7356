import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { linkTo, type Route, routeOf } from '../../client/browser/route.ts';
import { SCREENS } from '../../client/browser/screens.ts';
import { TOKEN } from './fixtures.ts';

const source = (file: string): string =>
  readFileSync(new URL(`../../client/${file}`, import.meta.url), 'utf8');

/** "new-site" → "NewSite". */
const capitals = (name: string): string => name.replace(/(?:^|-)(.)/g, (_, first) => first.toUpperCase());

describe('the table of screens', () => {
  it.each(Object.entries(SCREENS))(
    '%s: its file holds its page and nothing else for others',
    (name, { file }) => {
      expect(file).toMatch(new RegExp(`/${name}-page[.]tsx$`));
      const exported = [...source(file).matchAll(/^export (?:function|const|class) (\w+)/gm)].map(
        ([, word]) => word,
      );
      expect(exported).toEqual([`${capitals(name)}Page`]);
    },
  );

  it.each(Object.values(SCREENS))('the app takes $path from $file', ({ file }) => {
    expect(source('app.tsx')).toContain(`'./${file}'`);
  });

  it('has each address once', () => {
    const paths = Object.values(SCREENS).map(({ path }) => path);
    expect(new Set(paths).size).toBe(paths.length);
  });
});

describe('an address', () => {
  const screen = (name: string, parts: Record<string, string>) => ({ kind: 'screen', name, parts });

  it.each([
    ['/', '', screen('home', {})],
    ['/join', '#ABC234', screen('join', { code: 'ABC234', proof: '' })],
    ['/join', '#ABC234/Zr8nVb3T', screen('join', { code: 'ABC234', proof: 'Zr8nVb3T' })],
    ['/join/', '', screen('join', { code: '', proof: '' })],
    ['/panel', '#new', screen('panel', { fresh: 'new', alone: '' })],
    ['/panel', '#new/walking', screen('panel', { fresh: 'new', alone: 'walking' })],
    ['/panel', '', screen('panel', { fresh: '', alone: '' })],
    ['/emitter', '', screen('emitter', {})],
    ['/watch', '#t%2Dk', screen('review', { token: 't-k' })],
    ['/watch', '#%E0%A4%A', screen('review', { token: '%E0%A4%A' })],
    ['/site/new', '', screen('new-site', {})],
    ['/watch', '', { kind: 'cut-short' }],
    ['/site/pair', '#only-a-token', { kind: 'cut-short' }],
    ['/elsewhere', '', { kind: 'unknown' }],
  ])('%s%s leads where it says', (path, hash, route) => {
    expect(routeOf(path, hash)).toEqual(route);
  });

  it('leads back to the screen it was made for', () => {
    const there = (link: string): Route => routeOf(...(link.split(/(?=#)/) as [string, string]));
    const token = TOKEN;
    expect(there(linkTo('board', { token }))).toEqual(screen('board', { token }));
    expect(there(linkTo('import', { token }))).toEqual(screen('import', { token }));
    expect(there(linkTo('plan', { token }))).toEqual(screen('plan', { token, pair: '' }));
    expect(there(linkTo('plan', { token, pair: 'hall-3.east' }))).toEqual(
      screen('plan', { token, pair: 'hall-3.east' }),
    );
    expect(there(linkTo('visit', { token, job: 'job-1' }))).toEqual(screen('visit', { token, job: 'job-1' }));
    expect(there(linkTo('report', { token, job: undefined }))).toEqual(screen('report', { token, job: '' }));
    expect(linkTo('emitter', {})).toBe('/emitter');
  });
});

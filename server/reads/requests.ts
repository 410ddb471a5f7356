import type { MiddlewareHandler } from 'hono';
import { ROUTES, type Route } from '../../src/protocol/routes.ts';
import type { Carriage } from '../guard/carriage.ts';
import { keyIdOf } from '../guard/secrets.ts';
import type { Entrance } from '../http/entrance.ts';
import type { Env } from '../http/http.ts';
import { type Reads, readerOf } from './reads.ts';

interface RequestReadsDeps {
  readonly reads: Reads;
  readonly entrance: Entrance;
  readonly carriage: Carriage | undefined;
}

const READING = new Map(
  Object.values<Route>(ROUTES)
    .filter(({ reads }) => reads !== undefined)
    .map((route) => [`${route.method} /api${route.path}`, route]),
);

/** With a key of a site, the visit that was asked for; the handler has held it to the site. */
const namesVisit = ({ bearer, query }: Route): boolean =>
  (bearer === 'site' || bearer === 'desk') && query !== undefined && 'job' in query.shape;

/** Writes down who was given what of a record, before the answer leaves. */
export function notesReads({ reads, entrance, carriage }: RequestReadsDeps): MiddlewareHandler<Env> {
  return async (c, next) => {
    await next();
    const route = READING.get(`${c.req.method.toLowerCase()} ${c.req.path}`);
    // What was carried here is written down where it came from: only there it is known who is signed in.
    const isCarried = carriage?.callerIn(c.env.incoming.headers) !== undefined;
    if (route?.reads === undefined || !c.res.ok || isCarried) return;
    const pass = c.get('pass');
    const visit = namesVisit(route) ? c.req.query('job') : undefined;
    await reads.note({
      log: visit ?? pass?.job ?? '',
      what: route.reads,
      role: pass?.role ?? '',
      key: pass ? keyIdOf(pass.token) : '',
      ...readerOf(entrance.nameOf(c.env.incoming)),
    });
  };
}

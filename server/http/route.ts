import type { Handler, Hono } from 'hono';
import type { Route } from '../../src/protocol/routes.ts';
import type { Env } from './http.ts';

/** Answers one row of the table of routes: the only way in which an address below `/api` comes to be. */
export function answer(app: Hono<Env>, { method, path }: Route, handler: Handler<Env>): void {
  app.on(method, path, handler);
}

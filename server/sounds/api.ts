import { Hono } from 'hono';
import { ROUTES } from '../../src/protocol/routes.ts';
import { type Env, goodPass, readQuery, refuse } from '../http/http.ts';
import { answer } from '../http/route.ts';
import type { Clock } from '../process/clock.ts';
import type { Store } from '../store/store.ts';
import { give, sound } from './sounds.ts';

/** Sounds of a job, for its seats and its watchers. */
export function soundApi(store: Store, clock: Clock): Hono<Env> {
  const app = new Hono<Env>();
  answer(app, ROUTES.sound, async (c) => {
    const pass = await goodPass(c, store);
    if (pass instanceof Response) return pass;
    const wanted = await readQuery(c, ROUTES.sound.query);
    if (wanted.kind === 'refused') return refuse(c, wanted.reason, wanted.text);
    return give(c, await sound(store, pass.job, wanted.value.seq, clock.now()));
  });
  return app;
}

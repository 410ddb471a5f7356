import { Hono } from 'hono';
import { diskAlmostFullText, NO_METRICS, STOPPING } from '../src/phrases/service.ts';
import type { Health, Live } from '../src/protocol/health.ts';
import { ROUTES } from '../src/protocol/routes.ts';
import { PROTOCOL_VERSION } from '../src/protocol/socket.ts';
import { type Env, refuse } from './http/http.ts';
import { answer } from './http/route.ts';
import type { Rooms } from './jobs/rooms.ts';
import type { SpeechService } from './speech/service.ts';
import type { FreeSpace } from './store/free-space.ts';
import type { Store } from './store/store.ts';
import type { Telemetry } from './telemetry/telemetry.ts';
import { isBearer } from './telemetry/token.ts';

export interface HealthDeps {
  store: Store;
  disk: FreeSpace;
  rooms: Rooms;
  speech: SpeechService;
  telemetry: Telemetry;
  /** Of the program. */
  version: string;
  isStopping: () => boolean;
  /** Who sends it may read the metrics; without one, nobody may. */
  metricsToken?: string | undefined;
}

/** What watches over the server: whether it runs, whether it can serve, and how it does. */
export function healthApi({
  store,
  disk,
  rooms,
  speech,
  telemetry,
  version,
  isStopping,
  metricsToken,
}: HealthDeps): Hono<Env> {
  const app = new Hono<Env>();

  answer(app, ROUTES.live, (c) => c.json({ ok: true } satisfies Live));

  answer(app, ROUTES.health, async (c) => {
    if (isStopping()) return refuse(c, 'store-failed', STOPPING);
    await store.health();
    const free = await disk.now();
    if (free < disk.least) return refuse(c, 'store-failed', diskAlmostFullText(free, disk.least));
    return c.json({
      ok: true,
      version,
      protocol: PROTOCOL_VERSION,
      store: store.name,
      speech: speech.state,
      liveJobs: rooms.count,
    } satisfies Health);
  });

  answer(app, ROUTES.metrics, async (c) => {
    if (metricsToken === undefined || !isBearer(c.req.header('authorization'), metricsToken))
      return refuse(c, 'bad-token', NO_METRICS);
    return c.body(await telemetry.metrics.text(), 200, { 'Content-Type': telemetry.metrics.type });
  });

  return app;
}

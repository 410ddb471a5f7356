import { type Context, Hono } from 'hono';
import { Seat } from '../../src/model/facts.ts';
import { TOO_MANY_PHOTOS } from '../../src/phrases/limits.ts';
import { ONLY_READING, UNKNOWN_LINK } from '../../src/phrases/links.ts';
import { ROUTES } from '../../src/protocol/routes.ts';
import { Buckets } from '../guard/allowance.ts';
import type { Limits } from '../guard/limits.ts';
import { type Env, goodPass, read, readQuery, refuse, reply } from '../http/http.ts';
import { answer } from '../http/route.ts';
import { logged } from '../jobs/logged.ts';
import type { Room } from '../jobs/room.ts';
import type { Rooms } from '../jobs/rooms.ts';
import type { Store } from '../store/store.ts';
import { give, picture, removePhoto, takePhoto } from './photos.ts';

interface PhotoApiDeps {
  rooms: Rooms;
  store: Store;
  limits: Limits;
}

/** Photos of a job, for its seats and its watchers. */
export function photoApi({ rooms, store, limits }: PhotoApiDeps): Hono<Env> {
  const app = new Hono<Env>();
  const photosOf = new Buckets(limits.photos);

  answer(app, ROUTES.photo, async (c) => {
    const pass = await goodPass(c, store);
    if (pass instanceof Response) return pass;
    const wanted = await readQuery(c, ROUTES.photo.query);
    if (wanted.kind === 'refused') return refuse(c, wanted.reason, wanted.text);
    return give(c, await picture(store, pass.job, wanted.value.seq));
  });

  answer(app, ROUTES.takePhoto, (c) =>
    fromSeat(c, async (room, seat) => {
      const taken = await readQuery(c, ROUTES.takePhoto.query);
      if (taken.kind === 'refused') return reply(c, taken, 400);
      const now = performance.now();
      if (!photosOf.of(room.job, now).take(now)) return refuse(c, 'too-fast', TOO_MANY_PHOTOS);
      const content = new Uint8Array(await c.req.arrayBuffer());
      return reply(c, logged(await takePhoto(room, seat, taken.value, content)), 201);
    }),
  );

  answer(app, ROUTES.removePhoto, (c) =>
    fromSeat(c, async (room, seat) => {
      const removed = await read(c, ROUTES.removePhoto.body);
      if (removed.kind === 'refused') return reply(c, removed, 400);
      return reply(c, logged(await removePhoto(room, seat, removed.value)), 200);
    }),
  );
  return app;

  async function fromSeat(
    c: Context<Env>,
    act: (room: Room, seat: Seat) => Promise<Response>,
  ): Promise<Response> {
    const pass = await goodPass(c, store);
    if (pass instanceof Response) return pass;
    const seat = Seat.safeParse(pass.role);
    if (!seat.success) return refuse(c, 'read-only', ONLY_READING);
    const room = await rooms.get(pass.job);
    return room ? act(room, seat.data) : refuse(c, 'bad-token', UNKNOWN_LINK);
  }
}

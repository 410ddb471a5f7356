import { describe, expect, it } from 'vitest';
import { WebSocket } from 'ws';
import { PROTOCOL_VERSION, SOCKET_PATH } from '../../src/protocol/socket.ts';
import { serve } from './house.ts';
import { openJob, Phone } from './phone.ts';

const limits = { pingEveryMs: 40, deadAfterMs: 160, helloWithinMs: 60_000 };

describe('the heartbeat', () => {
  it('cuts a line on which nothing comes any more', async () => {
    const { url } = await serve({ limits });
    const socket = new WebSocket(url.replace(/^http/, 'ws') + SOCKET_PATH, { autoPong: false });
    expect(await new Promise((resolve) => socket.once('close', resolve))).toBe(1006);
  });

  it('keeps a line that is answered, though nobody says anything', async () => {
    const { url } = await serve({ limits });
    const panel = await Phone.at(url, (await openJob(url)).token);
    let pings = 0;
    await new Promise<void>((resolve) =>
      panel.socket.on('ping', () => {
        pings += 1;
        if (pings > 6) resolve();
      }),
    );
    expect(panel.socket.readyState).toBe(WebSocket.OPEN);
  });

  it('cuts nobody for the time in which the server itself could not hear', async () => {
    const { url } = await serve({ limits });
    const panel = await Phone.at(url, (await openJob(url)).token);
    for (let stall = 0; stall < 3; stall++) {
      // Nothing is read meanwhile, neither here nor by the server, which is in this process.
      const end = performance.now() + 3 * limits.deadAfterMs;
      while (performance.now() < end);
      await new Promise((resolve) => setTimeout(resolve, 3 * limits.pingEveryMs));
    }
    expect(panel.socket.readyState).toBe(WebSocket.OPEN);
  });

  it('takes a hello that came in time, though the server itself was too late to read it', async () => {
    const { url } = await serve({ limits: { helloWithinMs: 60 } });
    const { token } = await openJob(url);
    const panel = new Phone(url);
    await panel.opened();
    panel.send({ t: 'hello', v: PROTOCOL_VERSION, token, after: -1 });
    const end = performance.now() + 200;
    while (performance.now() < end);
    expect((await panel.next('welcome')).role).toBe('panel');
  });
});

import { useEffect, useMemo, useState } from 'preact/hooks';
import { SOCKET_PATH } from '../../src/protocol.ts';
import { Connection, type Socket } from '../link/connection.ts';
import type { Link } from '../link/link.ts';
import { outboxIn } from '../link/outbox.ts';
import { memoryStorage } from '../storage.ts';

/** The link of somebody who only watches; redraws whenever it has news. */
export function useWatch(token: string): Link {
  const connection = useMemo(
    () =>
      new Connection(token, {
        open: openSocket,
        now: Date.now,
        every: (ms, call) => {
          const timer = setInterval(call, ms);
          return () => clearInterval(timer);
        },
        // A watcher writes nothing.
        outbox: outboxIn(memoryStorage(), 'watcher'),
      }),
    [token],
  );
  const [, redraw] = useState({});
  useEffect(() => {
    const unsubscribe = connection.subscribe(() => redraw({}));
    const online = () => connection.feed({ on: 'online' });
    const looked = () => connection.feed({ on: 'visible', visible: document.visibilityState === 'visible' });
    addEventListener('online', online);
    document.addEventListener('visibilitychange', looked);
    connection.start();
    return () => {
      unsubscribe();
      removeEventListener('online', online);
      document.removeEventListener('visibilitychange', looked);
      connection.stop();
    };
  }, [connection]);
  return connection.link;
}

function openSocket(): Socket {
  const url = new URL(SOCKET_PATH, location.href);
  url.protocol = url.protocol === 'https:' ? 'wss:' : 'ws:';
  // Its handlers are called with an event that `Socket` leaves out.
  return new WebSocket(url) as unknown as Socket;
}

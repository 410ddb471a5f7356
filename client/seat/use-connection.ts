import { useEffect, useMemo, useState } from 'preact/hooks';
import { SOCKET_PATH } from '../../src/protocol.ts';
import { Connection, type Socket } from '../link/connection.ts';
import { outboxIn } from '../link/outbox.ts';
import { browserStorage } from '../storage.ts';
import type { SavedSeat } from './saved-seats.ts';

/** The connection of one seat, alive as long as its page is shown; redraws whenever it has news. */
export function useConnection({ token, job, seat }: SavedSeat): Connection {
  const connection = useMemo(
    () =>
      new Connection(token, {
        open: openSocket,
        now: Date.now,
        every: (ms, call) => {
          const timer = setInterval(call, ms);
          return () => clearInterval(timer);
        },
        outbox: outboxIn(browserStorage, `outbox.${job}.${seat}`),
      }),
    [token, job, seat],
  );
  const [, redraw] = useState({});
  useEffect(() => {
    const unsubscribe = connection.subscribe(() => redraw({}));
    const online = () => connection.feed({ on: 'online' });
    const looked = () => connection.feed({ on: 'visible', visible: document.visibilityState === 'visible' });
    addEventListener('online', online);
    addEventListener('pageshow', looked);
    document.addEventListener('visibilitychange', looked);
    connection.start();
    return () => {
      unsubscribe();
      removeEventListener('online', online);
      removeEventListener('pageshow', looked);
      document.removeEventListener('visibilitychange', looked);
      connection.stop();
    };
  }, [connection]);
  return connection;
}

function openSocket(): Socket {
  const url = new URL(SOCKET_PATH, location.href);
  url.protocol = url.protocol === 'https:' ? 'wss:' : 'ws:';
  // Its handlers are called with an event that `Socket` leaves out.
  return new WebSocket(url) as unknown as Socket;
}

import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Entry } from '../../src/model/entry.ts';
import { SOCKET_PATH } from '../../src/protocol/socket.ts';
import type { Storage } from '../browser/storage.ts';
import { Connection, type Socket } from './connection.ts';
import { outboxIn } from './outbox.ts';

export interface Kept {
  /** Where letters are kept, and under which name. */
  storage: Storage;
  drawer: string;
  /** As in `World`. */
  known?: readonly Entry[];
  /** Another way to a room than the server. */
  open?: (() => Socket) | undefined;
  /** As in `World`. A later one is told with the first remark. */
  name?: string | undefined;
}

/** A connection that lasts as long as its page is shown. Every change draws the page again. */
export function useConnection(
  token: string,
  { storage, drawer, known, open = openSocket, name }: Kept,
): Connection {
  const connection = useMemo(
    () =>
      new Connection(token, {
        open,
        now: Date.now,
        every: (ms, call) => {
          const timer = setInterval(call, ms);
          return () => clearInterval(timer);
        },
        outbox: outboxIn(storage, drawer),
        ...(known && { known }),
        name,
      }),
    [token, storage, drawer, known, open],
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
  // Its handlers also get an event, which `Socket` leaves out.
  return new WebSocket(url) as unknown as Socket;
}

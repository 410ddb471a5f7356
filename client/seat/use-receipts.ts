import { useEffect } from 'preact/hooks';
import type { Seq } from '../../src/model/ids.ts';
import type { Connection } from '../link/connection.ts';

/**
 * Tells the panel what this phone, on the ladder, has shown as current and spoken to its end; again on each new link, for
 * the server keeps it only while it runs. `current`: undefined where there is nothing to tell. A page that is hidden
 * shows nothing.
 */
export function useReceipts(connection: Connection, current: Seq | undefined, said: Seq | -1): void {
  const { phase, conn, visible } = connection.link;
  const spoken = current !== undefined && said >= current;
  useEffect(() => {
    if (current === undefined || phase !== 'live' || !(visible || spoken)) return;
    connection.feed({ on: 'receipt', instruction: current, how: spoken ? 'spoken' : 'shown' });
  }, [connection, phase, conn, visible, current, spoken]);
}

import { kindsOf } from '../../src/model/kinds.ts';
import { ServerMessage } from '../../src/protocol/socket.ts';

/** A frame as this page understands it. An unknown kind comes from a newer server and is ignored. */
export type Decoded =
  | { kind: 'message'; message: ServerMessage }
  | { kind: 'unknown' }
  | { kind: 'unreadable' };

const KNOWN = new Set<string>(kindsOf(ServerMessage, 't'));

export function decode(text: string): Decoded {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return { kind: 'unreadable' };
  }
  const parsed = ServerMessage.safeParse(raw);
  if (parsed.success) return { kind: 'message', message: parsed.data };
  const t = (raw as { t?: unknown } | null)?.t;
  return { kind: typeof t === 'string' && !KNOWN.has(t) ? 'unknown' : 'unreadable' };
}

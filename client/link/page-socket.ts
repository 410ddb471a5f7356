import type { ClientMessage, ServerMessage } from '../../src/protocol/socket.ts';
import type { Socket } from './connection.ts';

/** What speaks the protocol of the server from within this page, so that the seat is the real one. */
export abstract class PageSocket implements Socket {
  onopen: Socket['onopen'] = null;
  onclose: Socket['onclose'] = null;
  onmessage: Socket['onmessage'] = null;

  protected abstract take(message: ClientMessage): void;

  send(data: string | ArrayBufferView<ArrayBuffer>): void {
    // Without a server's speech nobody sends sound here.
    if (typeof data !== 'string') return;
    const message = JSON.parse(data) as ClientMessage;
    queueMicrotask(() => this.take(message));
  }

  close(): void {
    this.onmessage = null;
    this.onclose = null;
  }

  protected tell(message: ServerMessage): void {
    this.onmessage?.({ data: JSON.stringify(message) });
  }
}

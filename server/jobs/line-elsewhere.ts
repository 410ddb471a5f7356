import { WebSocket } from 'ws';
import { SOCKET_PATH } from '../../src/protocol/socket.ts';

/** A phone's end of a carried line: what comes from the other process goes there. */
export interface PhoneEnd {
  frame(data: Buffer): void;
  closed(code: number, reason: string): void;
}

/**
 * The line to the process that has a phone's job. The phone is connected here, and all that it sends and is sent passes as it is,
 * so that one process alone decides. Nothing is kept: what a broken line lost, the phone sends or asks for again.
 */
export class LineElsewhere {
  private readonly socket: WebSocket;
  private waiting: (string | Buffer)[] = [];

  /** `headers`: that say who calls. */
  constructor(url: string, headers: Record<string, string>, phone: PhoneEnd) {
    this.socket = new WebSocket(url.replace(/^http/, 'ws') + SOCKET_PATH, {
      headers,
      perMessageDeflate: false,
      handshakeTimeout: 5_000,
    });
    this.socket.on('open', () => {
      for (const frame of this.waiting) this.socket.send(frame);
      this.waiting = [];
    });
    this.socket.on('message', (data: Buffer) => phone.frame(data));
    this.socket.on('close', (code, reason) => phone.closed(code, String(reason)));
    // It is closed then, too.
    this.socket.on('error', () => {});
  }

  /** Text as text, sound as bytes. */
  send(frame: string | Buffer): void {
    if (this.socket.readyState === WebSocket.CONNECTING) this.waiting.push(frame);
    else if (this.socket.readyState === WebSocket.OPEN) this.socket.send(frame);
  }

  close(): void {
    this.socket.close();
  }
}

import type { Socket } from '../link/connection.ts';

/** The line from the phone at the emitter to the panel's, as long as this page is not loaded again. */
let line: RTCPeerConnection | undefined;

/** A new line takes the place of the one before. */
export function keepLine(met: RTCPeerConnection): void {
  line?.close();
  line = met;
}

/** Nothing but a new meeting brings a line back that has failed. */
const canCarry = ({ connectionState }: RTCPeerConnection): boolean =>
  connectionState !== 'failed' && connectionState !== 'closed';

/** A connection to the room at the panel's phone: a channel of its own on the line. */
export function openLine(): Socket {
  const socket: Socket = {
    ...{ onopen: null, onclose: null, onmessage: null },
    send(data) {
      if (channel?.readyState === 'open') channel.send(data as string);
    },
    close() {
      socket.onmessage = null;
      socket.onclose = null;
      channel?.close();
    },
  };
  const channel = line && canCarry(line) ? line.createDataChannel('room') : undefined;
  if (!channel) {
    queueMicrotask(() => socket.onclose?.());
    return socket;
  }
  channel.onopen = () => socket.onopen?.();
  channel.onclose = () => socket.onclose?.();
  channel.onmessage = ({ data }) => socket.onmessage?.({ data });
  return socket;
}

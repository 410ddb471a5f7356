import { PAGES_DIFFER } from '../../src/phrases/meeting.ts';
import { readFrame } from '../../src/protocol/read-frame.ts';
import { DEAD_AFTER_MS, MAX_FRAME_BYTES, PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import type { RoomHere } from './room-here.ts';
import { SocketHere } from './socket-here.ts';

const LOOK_EVERY_MS = 1_000;

/** The seat at the emitter, for the phone at the other end of a channel. Each connection of that phone has a channel of its own. */
export function hostGuest(room: RoomHere, channel: RTCDataChannel): void {
  const socket = new SocketHere(Promise.resolve(room), 'emitter');
  let heardAt = Date.now();
  let lookedAt = heardAt;
  // A phone that walked away says nothing: its channel looks open for half a minute.
  const looking = setInterval(() => {
    const now = Date.now();
    // This page was frozen: the silence before proves nothing.
    if (now - lookedAt > DEAD_AFTER_MS) heardAt = now;
    lookedAt = now;
    if (now - heardAt > DEAD_AFTER_MS) end();
  }, LOOK_EVERY_MS);
  const end = () => {
    clearInterval(looking);
    channel.onclose = null;
    channel.onmessage = null;
    socket.close();
    channel.close();
  };
  socket.onmessage = ({ data }) => {
    if (channel.readyState === 'open') channel.send(data as string);
  };
  channel.onclose = end;
  channel.onmessage = ({ data }) => {
    heardAt = Date.now();
    // Sound comes as bytes: nobody hears it here.
    if (typeof data !== 'string' || data.length > MAX_FRAME_BYTES) return;
    const read = readFrame(data);
    if (read.kind === 'bad') {
      const { reason, text, id } = read;
      socket.tell({ t: 'refused', reason, text, ...(id && { id }) });
    } else if (read.message.t === 'hello' && read.message.v !== PROTOCOL_VERSION) {
      socket.tell({ t: 'refused', reason: 'version', text: PAGES_DIFFER });
    } else socket.take(read.message);
  };
}

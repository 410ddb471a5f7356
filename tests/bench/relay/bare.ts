import { type WebSocket, WebSocketServer } from 'ws';

/** What a relay can cost at the least: each frame goes as it came to all of its crew, a ping back alone, and nothing is kept. */
const crews = new Map<string, Set<WebSocket>>();
const server = new WebSocketServer({ port: 0, host: '127.0.0.1', perMessageDeflate: false });
server.on('connection', (socket, { url = '' }) => {
  const crew = crews.get(url) ?? new Set();
  crews.set(url, crew.add(socket));
  socket.on('message', (frame) => {
    const text = String(frame);
    if (text.startsWith('{"t":"ping"')) {
      socket.send(text.replace('ping', 'pong'));
      return;
    }
    for (const member of crew) member.send(text);
  });
});
server.on('listening', () => {
  const { port } = server.address() as { port: number };
  console.log(`This machine  http://127.0.0.1:${port}`);
});

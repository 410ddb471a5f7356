import type * as z from 'zod/mini';
import { kindsOf as names } from '../model/kinds.ts';
import {
  CLOSE_CODES,
  ClientMessage,
  MAX_FRAME_BYTES,
  SAMPLE_RATE,
  ServerMessage,
  SOCKET_PATH,
} from './socket.ts';
import { type JsonSchema, schemasSent, schemasTaken } from './wire-schema.ts';

const AT = '#/components/schemas/';

/** The kinds of a union of messages, by the name that each gets in the document. */
const kindsOf = (
  union: typeof ClientMessage | typeof ServerMessage,
  from: string,
): Record<string, z.ZodMiniType> =>
  Object.fromEntries(
    names(union, 't').map((kind, i) => [`${from}-${kind}`, union.def.options[i] as z.ZodMiniType]),
  );

/** The websocket as an AsyncAPI document (3.0.0), from the schemas that the server reads by. `version`: of the program. */
export function asyncApi(version: string): object {
  // AsyncAPI's own schemas are JSON Schema draft 7.
  const options = { at: AT, target: 'draft-7' } as const;
  const fromPhone = schemasTaken(kindsOf(ClientMessage, 'phone'), false, options);
  const fromServer = schemasSent(kindsOf(ServerMessage, 'server'), options);
  const phone = Object.keys(fromPhone);
  const server = Object.keys(fromServer).filter((name) => name.startsWith('server-'));
  return {
    asyncapi: '3.0.0',
    info: {
      title: 'Ladderline over a websocket',
      version,
      description: [
        'The rules (R1, R2, …) are in docs/protocol.md; what goes over HTTP is in /api/openapi.json.',
        `A text frame is one message in JSON, of at most ${MAX_FRAME_BYTES} bytes. The first is "hello".`,
        `Binary frames are sound: 16-bit little-endian mono PCM, ${SAMPLE_RATE} samples a second.`,
        `Refusals that end the connection, with their close codes: ${JSON.stringify(CLOSE_CODES)}.`,
      ].join('\n'),
      license: { name: 'Apache-2.0' },
    },
    defaultContentType: 'application/json',
    channels: {
      socket: {
        address: SOCKET_PATH,
        messages: {
          ...Object.fromEntries([...phone, ...server].map((name) => [name, ref('messages', name)])),
          sound: ref('messages', 'sound'),
        },
        bindings: { ws: { method: 'GET' } },
      },
    },
    operations: {
      fromPhone: operation('receive', [...phone, 'sound']),
      toPhone: operation('send', server),
    },
    components: {
      messages: {
        ...Object.fromEntries(
          [...phone, ...server].map((name) => [name, { name, payload: ref('schemas', name) }]),
        ),
        sound: { name: 'sound', contentType: 'application/octet-stream', payload: { type: 'string' } },
      },
      schemas: { ...fromPhone, ...fromServer } satisfies Record<string, JsonSchema>,
    },
  };
}

const ref = (kind: string, name: string): object => ({ $ref: `#/components/${kind}/${name}` });

const operation = (action: 'receive' | 'send', messages: readonly string[]): object => ({
  action,
  channel: { $ref: '#/channels/socket' },
  messages: messages.map((name) => ({ $ref: `#/channels/socket/messages/${name}` })),
});

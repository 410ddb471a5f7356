import * as z from 'zod/mini';
import { HttpRefusal } from './jobs.ts';
import { type Bearer, ROUTES, type Route } from './routes.ts';
import { schemasSent, schemasTaken } from './wire-schema.ts';

const AT = '#/components/schemas/';

/** Whose token, in words. */
const BEARERS: Record<Exclude<Bearer, 'anyone'>, string> = {
  asker: 'The key that the question to the panel was answered with.',
  job: 'A token of the job, or of a site for its own log.',
  site: 'Either token of the site.',
  desk: "The token of the site's desk.",
  holder: 'The cookie of who is signed in to an account, not a token.',
  administrator: 'The cookie of an administrator, not a token.',
  owner: 'The token in the file metrics.token of the data folder.',
};

const BY_COOKIE: ReadonlySet<Bearer> = new Set(['holder', 'administrator']);

/** The ways in which a request may be let in; none where anybody is. */
function security({ bearer, entrance }: Route): object[] {
  const always = bearer === 'anyone' ? {} : BY_COOKIE.has(bearer) ? { session: [] } : { token: [] };
  if (entrance) return [always, { ...always, session: [] }];
  return bearer === 'anyone' ? [] : [always];
}

const ENTRANCE = 'Besides, where the owner asks for it, the cookie of who came in (R64, R120).';

const capital = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);

/**
 * What the server answers over HTTP, as an OpenAPI document (3.1.1), from the table that the server registers from.
 * `version`: of the program.
 */
export function openApi(version: string): object {
  const routes: [string, Route][] = Object.entries(ROUTES);
  const options = { at: AT, target: 'draft-2020-12' } as const;
  const taken = Object.fromEntries(
    routes.flatMap(([name, { body }]) =>
      body instanceof z.ZodMiniType ? [[`${capital(name)}Request`, body]] : [],
    ),
  );
  const sent = { HttpRefusal, ...answersOf(routes) };
  const paths: Record<string, Record<string, object>> = {};
  for (const [name, route] of routes) {
    const path = `/api${route.path}`;
    paths[path] = { ...paths[path], [route.method]: operation(name, route, nameOf(sent)) };
  }
  return {
    openapi: '3.1.1',
    info: {
      title: 'Ladderline over HTTP',
      version,
      description: 'The rules (R1, R2, …) are in docs/protocol.md; the websocket is in /api/asyncapi.json.',
      license: { name: 'Apache-2.0', identifier: 'Apache-2.0' },
    },
    servers: [{ url: '/' }],
    paths,
    components: {
      schemas: { ...schemasTaken(taken, true, options), ...schemasSent(sent, options) },
      securitySchemes: {
        token: { type: 'http', scheme: 'bearer', description: '22 characters, base64url (R33, R34).' },
        session: {
          type: 'apiKey',
          in: 'cookie',
          name: '__Host-ladderline',
          description:
            'What signing in gives (R120), or the passphrase (R64); over plain http on this machine its name is ladderline.',
        },
      },
    },
  };
}

/** The shapes of all answers, each once, by the name of the first route that gives it. */
function answersOf(routes: readonly [string, Route][]): Record<string, z.ZodMiniType> {
  const names = new Map<z.ZodMiniType, string>();
  for (const [name, { answer }] of routes) {
    if (answer.is instanceof z.ZodMiniType && !names.has(answer.is))
      names.set(answer.is, `${capital(name)}Answer`);
  }
  return Object.fromEntries([...names].map(([shape, name]) => [name, shape]));
}

const nameOf =
  (named: Record<string, z.ZodMiniType>) =>
  (shape: z.ZodMiniType): string | undefined =>
    Object.keys(named).find((name) => named[name] === shape);

function operation(name: string, route: Route, named: (shape: z.ZodMiniType) => string | undefined): object {
  const { bearer, entrance, says, query, body, answer } = route;
  const said = [...(bearer === 'anyone' ? [] : [BEARERS[bearer]]), ...(entrance ? [ENTRANCE] : [])];
  const [type, schema] =
    answer.is instanceof z.ZodMiniType
      ? ['application/json', { $ref: `${AT}${named(answer.is)}` }]
      : [answer.is, undefined];
  return {
    operationId: name,
    summary: says,
    ...(said.length > 0 && { description: said.join(' ') }),
    security: security(route),
    parameters: query ? parameters(query) : [],
    ...(body && {
      requestBody: {
        required: true,
        content:
          typeof body === 'string'
            ? { [body]: {} }
            : { 'application/json': { schema: { $ref: `${AT}${capital(name)}Request` } } },
      },
    }),
    responses: {
      [answer.status]: {
        description: 'Done.',
        content: { [type]: schema ? { schema } : {} },
      },
      default: {
        description: 'Refused (R32).',
        content: { 'application/json': { schema: { $ref: `${AT}HttpRefusal` } } },
      },
    },
  };
}

function parameters(query: z.ZodMiniObject): object[] {
  const { properties = {}, required = [] } = z.toJSONSchema(query);
  return Object.entries(properties).map(([name, schema]) => ({
    name,
    in: 'query',
    required: required.includes(name),
    schema,
  }));
}

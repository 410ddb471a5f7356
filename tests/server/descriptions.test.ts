import { readFileSync } from 'node:fs';
import asyncApiSchemas from '@asyncapi/specs';
import { validate } from '@readme/openapi-parser';
import { Ajv } from 'ajv';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { layDown } from '../../server/demo/site-fixture.ts';
import { EMPTY_BOOK } from '../../server/store/account-book.ts';
import type { AccountsFile } from '../../server/store/accounts.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { asyncApi } from '../../src/protocol/asyncapi.ts';
import { openApi } from '../../src/protocol/openapi.ts';
import { serve } from './house.ts';
import { bothIn, get, openJob, SETUP } from './phone.ts';
import { demo } from './played-site.ts';

const doc = readFileSync('docs/protocol.md', 'utf8');

/** The examples of docs/protocol.md under a name. */
const examples = (name: string): unknown[] =>
  [...doc.matchAll(/```json (\w+)\n(.*?)```/gs)]
    .filter(([, told]) => told === name)
    .flatMap(([, , text = '']) => text.trim().split('\n'))
    .map((line) => JSON.parse(line));

/** Whether a value is as one of the schemas of a document has it. */
function holdsIn(document: { components?: { schemas?: object } }, ajv: Ajv | Ajv2020) {
  ajv.addSchema({ $id: 'document', ...document });
  return (name: string, value: unknown) =>
    ajv.validate({ $ref: `document#/components/schemas/${name}` }, value);
}

// The OpenAPI Initiative's schema of 3.1, by @readme/openapi-parser.
describe('the OpenAPI document', () => {
  const document = openApi('1.2.3') as {
    paths: Record<string, { post?: { operationId: string; security: object[] } }>;
    components?: { schemas?: object };
  };
  const holds = holdsIn(document, new Ajv2020({ strict: false }));

  it('is one', async () => {
    const result = await validate(structuredClone(document) as Parameters<typeof validate>[0]);
    expect(result).toMatchObject({ valid: true, warnings: [], specification: 'OpenAPI' });
  });

  it.each([
    ['OpenJob', 'OpenJobRequest'],
    ['Join', 'JoinRequest'],
    ['PlanPairs', 'PlanPairsRequest'],
    ['SignRecord', 'SignRecordRequest'],
    ['WriteHandOver', 'HandOverRequest'],
    ['JobOpened', 'OpenJobAnswer'],
    ['JobRecord', 'RecordAnswer'],
    ['SiteView', 'SiteAnswer'],
    ['SiteFindings', 'SiteFindingsAnswer'],
    ['HeadsTree', 'HeadsAnswer'],
  ])('describes %s as docs/protocol.md shows it', (name, schema) => {
    expect(examples(name).length).toBeGreaterThan(0);
    for (const example of examples(name)) expect(holds(schema, example)).toBe(true);
  });

  it.each([
    ['without a meter', { ...SETUP, meter: undefined }, {}],
    ['with a law of the meter that there is not', { ...SETUP, meter: { ...SETUP.meter, law: 'cubic' } }, {}],
    ['with a field that nobody knows (R32)', SETUP, { colour: 'red' }],
  ])('has no job opened %s', (_, setup, more) => {
    expect(holds('OpenJobRequest', { setup: SETUP })).toBe(true);
    expect(holds('OpenJobRequest', JSON.parse(JSON.stringify({ setup, ...more })))).toBe(false);
  });

  it('R120: says where, besides all else, the cookie of who is signed in may be asked for, and there it is', async () => {
    const store = new MemoryStore();
    const book = { ...EMPTY_BOOK, required: true };
    const accounts: AccountsFile = { read: () => book, change: () => ({ kind: 'changed', book }) };
    const { desk } = await layDown(store, demo);
    const { url } = await serve({ store, accounts });
    const operations = Object.entries(document.paths).flatMap(([path, { post }]) =>
      post ? [{ path, id: post.operationId, ways: post.security }] : [],
    );
    const asked = operations.filter(({ ways }) => ways.length > 1);
    expect(asked.map(({ id, ways }) => [id, ways])).toEqual([
      ['openJob', [{}, { session: [] }]],
      ['bringJob', [{}, { session: [] }]],
      ['openSite', [{}, { session: [] }]],
      ['signRecord', [{ token: [] }, { token: [], session: [] }]],
    ]);
    const [signing] = examples('SignRecord');
    for (const { path } of asked) {
      const answer = await fetch(url + path, {
        method: 'POST',
        headers: { authorization: `Bearer ${desk}`, 'content-type': 'application/json' },
        body: JSON.stringify(signing),
      });
      expect([path, answer.status, (await answer.json()).reason]).toEqual([path, 401, 'locked']);
    }
  });

  it('describes what the server really answers', async () => {
    const { url } = await serve();
    const { job } = await bothIn(url);
    const record = await (await get(url, '/api/record', job.token)).json();
    expect(record.entries.length).toBeGreaterThan(2);
    expect(holds('RecordAnswer', record)).toBe(true);
    expect(holds('RecordAnswer', { ...record, entries: [{ ...record.entries[0], seq: -1 }] })).toBe(false);
    expect(holds('HealthAnswer', await (await get(url, '/api/health')).json())).toBe(true);
    expect(holds('OpenJobAnswer', await openJob(url))).toBe(true);
    expect(holds('HttpRefusal', await (await get(url, '/api/record')).json())).toBe(true);
  });
});

// The AsyncAPI Initiative's schema of 3.0.0, by ajv.
describe('the AsyncAPI document', () => {
  const document = asyncApi('1.2.3');
  const holds = holdsIn(document, new Ajv({ strict: false }));

  it('is one', () => {
    const isOne = new Ajv({ strict: false, validateFormats: false }).compile(
      asyncApiSchemas.schemasWithoutId['3.0.0'] as object,
    );
    isOne(document);
    expect(isOne.errors).toBeNull();
    expect(isOne({ ...document, channels: { socket: { address: 5 } } })).toBe(false);
  });

  it.each(['client', 'server'])('describes every %s message that docs/protocol.md shows', (side) => {
    const from = side === 'client' ? 'phone' : 'server';
    for (const example of examples(side)) {
      expect(holds(`${from}-${(example as { t: string }).t}`, example)).toBe(true);
    }
    expect(holds('phone-say', { t: 'say', id: 'EdG8PyNWIIeF', via: 'shouted', text: '42' })).toBe(false);
  });
});

it('R90: both are given to anyone who asks, with the version of the program', async () => {
  const { url } = await serve();
  const { version } = await (await get(url, '/api/health')).json();
  expect(await (await get(url, '/api/openapi.json')).json()).toEqual(
    JSON.parse(JSON.stringify(openApi(version))),
  );
  expect(await (await get(url, '/api/asyncapi.json')).json()).toEqual(
    JSON.parse(JSON.stringify(asyncApi(version))),
  );
});

import { execFile, execFileSync } from 'node:child_process';
import { promisify } from 'node:util';
import canonicalize from 'canonicalize';
import { describe, expect, it } from 'vitest';
import { PYTHON } from '../python/find.ts';
import { serve } from './house.ts';
import { allWords } from './protocol-tables.ts';

const CLIENT = 'tests/python/client.py';

// A program in another language, with nothing of this one: Python 3 and its own library. Its crew is simulated there.
describe.skipIf(!PYTHON)('a client written in Python from docs/protocol.md', () => {
  const python = PYTHON ?? '';

  it('plays a whole job at both seats, and checks the chain by itself', async () => {
    const { url } = await serve();
    const { stdout } = await promisify(execFile)(python, [CLIENT, url], { timeout: 120_000 });
    const told = JSON.parse(stdout);
    expect(told).toMatchObject({
      accepted: 1,
      panel: ['normal', 'alarm', 'normal', 'fault', 'normal'],
      fault: null,
      exportHead: true,
      changedFault: 3,
      // Names beside the entries: R110, R111.
      sealed: ['item', 'readback', 'said', 'seated', 'watcher-remark'],
      refOfFirst: true,
      sameAtBothPhones: true,
      // A turn of a screw comes after the aim by eye.
      firstAtUnit: 're-aim',
      // What version 3 added.
      mounted: [['top-left', 'up-down']],
      watcherSaid: [{ type: 'watcher-remark', by: 'S. Example', text: 'Mind the crane.' }],
      watching: ['S. Example'],
      receipts: ['shown', 'spoken'],
      receiptsOfOrders: true,
    });
    expect(told.orders).toEqual(expect.arrayContaining(['block', 'confirm-item', 'cover', 'hold', 'turn']));
    expect(told.orders).toContain('offer-sign');
    expect(told.handedOver).toEqual([
      { type: 'as-left', values: { signal: expect.any(Number), receiverSerial: 'R-0012' } },
      { type: 'next-due', what: 'Clean and test', on: '2027-11-26' },
    ]);
    // It has no word that is not in the document. A number stands there as 142.
    const inDocument = new Set(allWords());
    const said: string[] = told.said.map((words: string) => words.replace(/^\d+$/, '142'));
    expect(said.filter((words) => !inDocument.has(words))).toEqual([]);
    expect([told.renamedFault, told.takenFault]).toEqual([told.firstSealed, told.firstSealed]);
    expect(told.lines).toBe(told.entries + 1);
  }, 150_000);

  // Numbers and the order of keys: RFC 8785, sections 3.2.2 and 3.2.3; beside it the package that the server uses.
  it.each([
    ['{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001]}'],
    ['[0,-0,1e21,1e20,123456789012345680000,1e-6,1e-7,-1.5,100,9007199254740993]'],
    ['{"\\u20ac":1,"\\r":2,"\\ufb33":3,"1":4,"\\ud83d\\ude00":5,"\\u0080":6,"\\u00f6":7}'],
    ['{"b":[true,null,false,"\\u20ac$\\u000f\\nA\'B\\"\\\\\\"/"],"a":{}}'],
  ])('writes %s as canonical JSON does', (text) => {
    const written = execFileSync(python, [CLIENT, '--canonical'], { input: text, encoding: 'utf8' });
    expect(written.trimEnd()).toBe(canonicalize(JSON.parse(text)));
  });
});

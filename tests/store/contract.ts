import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { digest } from '../../server/guard/secrets.ts';
import type { KeptRead, Read } from '../../server/store/reads.ts';
import { type KeptSummary, type Store, StoreFailure } from '../../server/store/store.ts';
import { emptyHead, findFault, headAfter, seal } from '../../src/log/chain.ts';
import type { Draft, Entry } from '../../src/model/entry.ts';
import type { Fact } from '../../src/model/facts.ts';
import type { Head } from '../../src/model/ids.ts';

const JOB = 'job-one-0001';
const OTHER = 'job-two-0002';

const remark = (text: string): Fact => ({ type: 'remark', seat: 'panel', text });

/** Seals `texts` as remarks onto `head`. Message ids are `<ref>` for the first, if given. */
export function sealRemarks(head: Head, texts: string[], ref?: string): Entry[] {
  let end = head;
  return texts.map((text, i) => {
    const draft: Draft = { actor: 'panel', fact: remark(text), ...(i === 0 && ref !== undefined && { ref }) };
    const entry = seal(end, draft, 1_700_000_000_000 + end.count);
    end = headAfter(entry);
    return entry;
  });
}

/** What every store must do. `open` gives a new, empty one. */
export function storeContract(name: string, open: () => Promise<Store>): void {
  describe(`the ${name} store`, () => {
    let store: Store;
    beforeEach(async () => {
      store = await open();
    });
    afterEach(() => store.close());

    const grow = async (texts: string[], ref?: string, job = JOB) => {
      const entries = sealRemarks(await store.head(job), texts, ref);
      expect(await store.append(job, entries)).toEqual({ kind: 'stored' });
      return entries;
    };

    it('knows nothing of a job that was never opened', async () => {
      expect(await store.head(JOB)).toEqual(emptyHead(JOB));
      expect(await store.read(JOB, -1, 10)).toEqual([]);
      expect(await store.seqOf(JOB, 'message-1')).toBeUndefined();
      expect(await store.audit(JOB)).toBeUndefined();
      expect(await store.jobs()).toEqual([]);
    });

    it('gives back what was appended, entry for entry, and its head', async () => {
      const entries = [...(await grow(['one', 'two'])), ...(await grow(['three']))];
      expect(await store.read(JOB, -1, 10)).toEqual(entries);
      const head = await store.head(JOB);
      expect(head).toEqual(headAfter(entries[2] as Entry));
      expect(findFault(await store.read(JOB, -1, 10), head)).toBeUndefined();
      expect(await store.audit(JOB)).toBeUndefined();
    });

    it('keeps every character as it came', async () => {
      const texts = ['\u0000 nul', 'Prüfung – “ok”', '火災 🔥', 'a\u2028b', "'; DROP TABLE entries"];
      await grow(texts);
      const facts = (await store.read(JOB, -1, 10)).map((entry) => entry.fact);
      expect(facts).toEqual(texts.map(remark));
      expect(await store.audit(JOB)).toBeUndefined();
    });

    it('reads on after an entry, and at most as many as asked for', async () => {
      const entries = await grow(['0', '1', '2', '3', '4']);
      expect(await store.read(JOB, 1, 2)).toEqual(entries.slice(2, 4));
      expect(await store.read(JOB, 4, 2)).toEqual([]);
      expect(await store.read(JOB, 99, 2)).toEqual([]);
    });

    it('keeps jobs apart and lists them in the order they were opened', async () => {
      await grow(['a'], undefined, OTHER);
      await grow(['b', 'c']);
      await grow(['d'], undefined, OTHER);
      expect((await store.jobs()).map(({ job, count }) => [job, count])).toEqual([
        [OTHER, 2],
        [JOB, 2],
      ]);
      expect(await store.audit(OTHER)).toBeUndefined();
    });

    it('takes a message id once: the second time it gives the first place and stores nothing', async () => {
      await grow(['before']);
      await grow(['the message', 'what follows from it'], 'message-1');
      await grow(['later']);
      const again = sealRemarks(await store.head(JOB), ['the message', 'again'], 'message-1');
      expect(await store.append(JOB, again)).toEqual({ kind: 'duplicate', seq: 1 });
      expect((await store.head(JOB)).count).toBe(4);
      expect(await store.seqOf(JOB, 'message-1')).toBe(1);
    });

    it('notices a duplicate even when it is sealed on an old head', async () => {
      const old = sealRemarks(emptyHead(JOB), ['x'], 'message-1');
      await store.append(JOB, old);
      expect(await store.append(JOB, old)).toEqual({ kind: 'duplicate', seq: 0 });
    });

    it('lets two jobs have the same message id', async () => {
      await grow(['x'], 'message-1');
      await grow(['y'], 'message-1', OTHER);
      expect(await store.seqOf(OTHER, 'message-1')).toBe(0);
    });

    it('refuses entries that do not follow its head, and stores none of them', async () => {
      const [first] = await grow(['first', 'second']);
      const onOldHead = sealRemarks(headAfter(first as Entry), ['a fork']);
      expect(await store.append(JOB, onOldHead)).toMatchObject({ kind: 'conflict', head: { count: 2 } });
      const withGap = sealRemarks(await store.head(JOB), ['3', '4', '5']).toSpliced(1, 1);
      expect(await store.append(JOB, withGap)).toMatchObject({ kind: 'conflict' });
      const ofOther = sealRemarks(await store.head(OTHER), ['x']);
      expect(await store.append(JOB, ofOther)).toMatchObject({ kind: 'conflict' });
      expect((await store.head(JOB)).count).toBe(2);
      expect(await store.read(JOB, -1, 10)).toHaveLength(2);
    });

    it('takes only one of two writers on the same head', async () => {
      const head = await store.head(JOB);
      const outcomes = await Promise.all([
        store.append(JOB, sealRemarks(head, ['mine'])),
        store.append(JOB, sealRemarks(head, ['yours'])),
      ]);
      expect(outcomes.map((o) => o.kind).sort()).toEqual(['conflict', 'stored']);
    });

    it('lets in the holder of a pass, until the seat goes to another phone', async () => {
      const [panel, emitter, later] = ['token-a', 'token-b', 'token-c'].map(digest) as [
        string,
        string,
        string,
      ];
      await store.append(JOB, sealRemarks(emptyHead(JOB), ['x']), {
        issue: [
          { token: panel, role: 'panel' },
          { token: emitter, role: 'emitter' },
        ],
      });
      expect(await store.pass(emitter)).toEqual({ job: JOB, role: 'emitter', revoked: false });
      await store.append(JOB, [], { revoke: 'emitter', issue: [{ token: later, role: 'emitter' }] });
      expect(await store.pass(emitter)).toEqual({ job: JOB, role: 'emitter', revoked: 'seat-lost' });
      expect(await store.pass(later)).toEqual({ job: JOB, role: 'emitter', revoked: false });
      expect(await store.pass(panel)).toEqual({ job: JOB, role: 'panel', revoked: false });
      expect(await store.pass(digest('no token'))).toBeUndefined();
    });

    it('takes a join code once, before it expires, and only the newest of a seat', async () => {
      const [old, code] = ['AAAAAA', 'BBBBBB'].map(digest) as [string, string];
      await store.append(JOB, [], { code: { code: old, seat: 'emitter', expiresAt: 1000 } });
      await store.append(JOB, [], { code: { code, seat: 'emitter', expiresAt: 1000 } });
      expect(await store.grant(old, 0)).toBeUndefined();
      expect(await store.grant(code, 999)).toEqual({ job: JOB, seat: 'emitter' });
      expect(await store.grant(code, 1000)).toBeUndefined();
      expect(await store.append(JOB, [], { spend: { code, now: 999 } })).toEqual({ kind: 'stored' });
      expect(await store.grant(code, 999)).toBeUndefined();
    });

    it('keeps the codes of the two seats apart', async () => {
      const [one, two] = ['AAAAAA', 'BBBBBB'].map(digest) as [string, string];
      await store.append(JOB, [], { code: { code: one, seat: 'emitter', expiresAt: 1000 } });
      await store.append(JOB, [], { code: { code: two, seat: 'panel', expiresAt: 1000 } });
      expect(await store.grant(one, 0)).toEqual({ job: JOB, seat: 'emitter' });
      expect(await store.grant(two, 0)).toEqual({ job: JOB, seat: 'panel' });
    });

    it('gives the passes that are good, and takes away one of them', async () => {
      const [one, two, other] = ['one', 'two', 'other'].map(digest) as [string, string, string];
      await store.append(JOB, [], {
        issue: [
          { token: one, role: 'emitter' },
          { token: two, role: 'watcher' },
        ],
      });
      await store.append(OTHER, [], { issue: [{ token: other, role: 'panel' }] });
      expect((await store.passes(JOB)).map(({ token }) => token).sort()).toEqual([one, two].sort());
      await store.append(JOB, [], { withdraw: two });
      expect(await store.passes(JOB)).toEqual([{ token: one, role: 'emitter' }]);
      expect(await store.pass(two)).toEqual({ job: JOB, role: 'watcher', revoked: 'revoked' });
      // Not of another log, and what was taken away is not given back as something else.
      await store.append(JOB, [], { withdraw: other });
      await store.append(JOB, [], { revoke: 'watcher' });
      expect((await store.pass(other))?.revoked).toBe(false);
      expect((await store.pass(two))?.revoked).toBe('revoked');
      await store.append(JOB, [], { revoke: 'emitter' });
      const given = (await store.everyPass(JOB)).sort((a, b) => a.role.localeCompare(b.role));
      expect(given).toEqual([
        { token: one, role: 'emitter', revoked: 'seat-lost' },
        { token: two, role: 'watcher', revoked: 'revoked' },
      ]);
    });

    it('voids the code of one seat, and of no other', async () => {
      const [one, two] = ['AAAAAA', 'BBBBBB'].map(digest) as [string, string];
      await store.append(JOB, [], { code: { code: one, seat: 'emitter', expiresAt: 1000 } });
      await store.append(JOB, [], { code: { code: two, seat: 'panel', expiresAt: 1000 } });
      await store.append(JOB, [], { voids: 'emitter' });
      expect(await store.grant(one, 0)).toBeUndefined();
      expect(await store.grant(two, 0)).toEqual({ job: JOB, seat: 'panel' });
    });

    it('stores nothing at all when the code was used before', async () => {
      const code = digest('AAAAAA');
      await store.append(JOB, [], { code: { code, seat: 'emitter', expiresAt: 1000 } });
      await store.append(JOB, [], { spend: { code, now: 1 } });
      const token = digest('token');
      const outcome = await store.append(JOB, sealRemarks(emptyHead(JOB), ['seated']), {
        spend: { code, now: 1 },
        issue: [{ token, role: 'emitter' }],
      });
      expect(outcome).toEqual({ kind: 'spent' });
      expect((await store.head(JOB)).count).toBe(0);
      expect(await store.pass(token)).toBeUndefined();
    });

    it('changes no key when the entries are not stored', async () => {
      await grow(['x']);
      const token = digest('token');
      await store.append(JOB, sealRemarks(emptyHead(JOB), ['fork']), { issue: [{ token, role: 'panel' }] });
      expect(await store.pass(token)).toBeUndefined();
    });

    describe('what lies beside an entry', () => {
      const salt = '00'.repeat(16);
      const content = Uint8Array.from({ length: 70_000 }, (_, i) => i % 251);

      it('is stored with the entry, byte for byte, and given back by its job and number alone', async () => {
        const [, second] = sealRemarks(emptyHead(JOB), ['one', 'two']);
        const put = { seq: second?.seq ?? -1, salt, content };
        await store.append(JOB, sealRemarks(emptyHead(JOB), ['one', 'two']), {}, { put });
        expect(await store.enclosed()).toEqual([{ job: JOB, seq: 1 }]);
        expect(await store.enclosure(JOB, 1)).toEqual({ salt, content });
        expect(await store.enclosure(JOB, 0)).toBeUndefined();
        expect(await store.enclosure(OTHER, 1)).toBeUndefined();
        expect(await store.audit(JOB)).toBeUndefined();
      });

      it('is not the memory of who gave it', async () => {
        const given = content.slice();
        await store.append(
          JOB,
          sealRemarks(emptyHead(JOB), ['one']),
          {},
          { put: { seq: 0, salt, content: given } },
        );
        given.fill(0);
        const kept = await store.enclosure(JOB, 0);
        expect(kept?.content).toEqual(content);
      });

      it('is removed with an entry, while the chain goes on, and the rest stays', async () => {
        await store.append(JOB, sealRemarks(emptyHead(JOB), ['one']), {}, { put: { seq: 0, salt, content } });
        const more = sealRemarks(await store.head(JOB), ['two']);
        await store.append(JOB, more, {}, { put: { seq: 1, salt, content } });
        await store.append(JOB, sealRemarks(await store.head(JOB), ['gone']), {}, { remove: 0 });
        expect(await store.enclosure(JOB, 0)).toBeUndefined();
        expect(await store.enclosure(JOB, 1)).toEqual({ salt, content });
        expect(await store.read(JOB, -1, 10)).toHaveLength(3);
        expect(await store.audit(JOB)).toBeUndefined();
      });

      it('is named by its job and number, of every log, and no longer once it is removed', async () => {
        expect(await store.enclosed()).toEqual([]);
        await store.append(JOB, sealRemarks(emptyHead(JOB), ['one']), {}, { put: { seq: 0, salt, content } });
        const [first, second] = [
          sealRemarks(emptyHead(OTHER), ['one']),
          sealRemarks(emptyHead(OTHER), ['one', 'two']),
        ];
        await store.append(OTHER, first);
        await store.append(OTHER, second.slice(1), {}, { put: { seq: 1, salt, content } });
        expect(await store.enclosed()).toEqual([
          { job: JOB, seq: 0 },
          { job: OTHER, seq: 1 },
        ]);
        await store.append(JOB, sealRemarks(await store.head(JOB), ['gone']), {}, { remove: 0 });
        expect(await store.enclosed()).toEqual([{ job: OTHER, seq: 1 }]);
      });

      it('may be removed although it is lost already', async () => {
        await grow(['one']);
        const gone = sealRemarks(await store.head(JOB), ['gone']);
        expect(await store.append(JOB, gone, {}, { remove: 0 })).toEqual({ kind: 'stored' });
      });

      it('is neither stored nor removed where the entries are not', async () => {
        await store.append(
          JOB,
          sealRemarks(emptyHead(JOB), ['one'], 'message-1'),
          {},
          { put: { seq: 0, salt, content } },
        );
        const other = content.slice(0, 10);
        const onOldHead = sealRemarks(emptyHead(JOB), ['fork']);
        const conflict = await store.append(
          JOB,
          onOldHead,
          {},
          { put: { seq: 5, salt, content: other }, remove: 0 },
        );
        expect(conflict.kind).toBe('conflict');
        const again = sealRemarks(await store.head(JOB), ['again'], 'message-1');
        const duplicate = await store.append(
          JOB,
          again,
          {},
          { put: { seq: 1, salt, content: other }, remove: 0 },
        );
        expect(duplicate.kind).toBe('duplicate');
        expect(await store.enclosure(JOB, 0)).toEqual({ salt, content });
        expect(await store.enclosure(JOB, 1)).toBeUndefined();
        expect(await store.enclosure(JOB, 5)).toBeUndefined();
      });
    });

    describe('names beside an entry', () => {
      const seated = (name: string): Fact => ({
        type: 'seated',
        seat: 'panel',
        device: 'phone',
        takeover: false,
        person: { name },
      });

      /** Entries with these names, each with its own salt. */
      async function growNamed(names: readonly string[], job = JOB): Promise<Entry[]> {
        let head = await store.head(job);
        const entries = names.map((name, i) => {
          const salt = () => String(head.count + i).padStart(32, 'a');
          const entry = seal(head, { actor: 'panel', fact: seated(name) }, 5, undefined, salt);
          head = headAfter(entry);
          return entry;
        });
        expect(await store.append(job, entries)).toEqual({ kind: 'stored' });
        return entries;
      }

      it('are stored with it and given back with it, and are named by its job and number', async () => {
        const entries = await growNamed(['A. Example', 'Ö. "Example"']);
        expect(await store.read(JOB, -1, 10)).toEqual(entries);
        expect(await store.named()).toEqual([
          { job: JOB, seq: 0, names: { person: { name: 'A. Example' } } },
          { job: JOB, seq: 1, names: { person: { name: 'Ö. "Example"' } } },
        ]);
        expect(await store.audit(JOB)).toBeUndefined();
        expect(await store.logs()).toEqual([JOB]);
      });

      it('go with an entry that says so, and with them the summary that was made of them; the others stay', async () => {
        await growNamed(['A. Example', 'B. Example']);
        await growNamed(['A. Example'], OTHER);
        const { count, hash } = await store.head(JOB);
        for (const job of [JOB, OTHER]) await store.keepSummary(job, { count, hash, body: '{}' });
        const fact: Fact = { type: 'names-forgotten', entries: [0], why: 'Asked for' };
        const entry = seal(await store.head(JOB), { actor: 'server', fact }, 9);
        expect(await store.append(JOB, [entry], {}, { forget: [0] })).toEqual({ kind: 'stored' });
        const [first, second] = await store.read(JOB, -1, 10);
        expect(first).toMatchObject({ fact: seated('(name forgotten)') });
        expect(first).not.toHaveProperty('salt');
        expect(second).toMatchObject({ fact: seated('B. Example') });
        expect(await store.audit(JOB)).toBeUndefined();
        expect(findFault(await store.read(JOB, -1, 10), await store.head(JOB))).toBeUndefined();
        expect(await store.summary(JOB)).toBeUndefined();
        expect(await store.summary(OTHER)).toBeDefined();
        expect((await store.named()).map(({ job, seq }) => [job, seq])).toEqual([
          [JOB, 1],
          [OTHER, 0],
        ]);
      });

      it('that are gone without such an entry, or with one that names another, are damage', async () => {
        await growNamed(['A. Example', 'B. Example']);
        const fact: Fact = { type: 'names-forgotten', entries: [1], why: 'Asked for' };
        const entry = seal(await store.head(JOB), { actor: 'server', fact }, 9);
        await store.append(JOB, [], {}, { forget: [1] });
        expect(await store.audit(JOB)).toEqual({ seq: 1, fault: 'names-missing' });
        await store.append(JOB, [entry]);
        expect(await store.audit(JOB)).toBeUndefined();
        await store.append(JOB, [], {}, { forget: [0] });
        expect(await store.audit(JOB)).toEqual({ seq: 0, fault: 'names-missing' });
      });

      it('that are there in spite of such an entry are damage', async () => {
        await growNamed(['A. Example']);
        const fact: Fact = { type: 'names-forgotten', entries: [0], why: 'Asked for' };
        await store.append(JOB, [seal(await store.head(JOB), { actor: 'server', fact }, 9)]);
        expect(await store.audit(JOB)).toEqual({ seq: 0, fault: 'names-back' });
      });

      it('stay where the entries are not stored', async () => {
        await growNamed(['A. Example']);
        const fork = sealRemarks(emptyHead(JOB), ['fork']);
        expect((await store.append(JOB, fork, {}, { forget: [0] })).kind).toBe('conflict');
        expect(await store.named()).toHaveLength(1);
      });
    });

    it('keeps the last summary of a log, apart from the log', async () => {
      expect(await store.summary(JOB)).toBeUndefined();
      await grow(['x']);
      const { count, hash } = await store.head(JOB);
      const [first, second] = ['a', 'b'].map((text) => ({ count, hash, body: `{"${text}":"“ok”"}` }));
      await store.keepSummary(JOB, first as KeptSummary);
      expect(await store.summary(JOB)).toEqual(first);
      await store.keepSummary(JOB, second as KeptSummary);
      expect(await store.summary(JOB)).toEqual(second);
      expect(await store.summary(OTHER)).toBeUndefined();
      expect((await store.head(JOB)).count).toBe(1);
      expect(await store.audit(JOB)).toBeUndefined();
    });

    it('knows from a kept summary that the log was longer, or another one', async () => {
      const [, two] = await grow(['one', 'two']);
      const keep = (count: number, hash: string) => store.keepSummary(JOB, { count, hash, body: '{}' });
      await keep(2, two?.hash ?? '');
      expect(await store.audit(JOB)).toBeUndefined();
      await keep(2, 'f'.repeat(64));
      expect(await store.audit(JOB)).toEqual({ seq: 1, fault: 'rewritten' });
      await keep(3, 'f'.repeat(64));
      expect(await store.audit(JOB)).toEqual({ seq: 2, fault: 'cut' });
      await store.keepSummary(OTHER, { count: 1, hash: 'f'.repeat(64), body: '{}' });
      expect(await store.audit(OTHER)).toEqual({ seq: 0, fault: 'missing' });
    });

    it('keeps signed heads in their order, and holds the logs to them', async () => {
      const [one, two] = await grow(['one', 'two']);
      const signed = (count: number, hash = '', job = JOB) => ({
        ...{ job, count, hash, at: 5, key: 'a key', signature: 'a signature' },
      });
      await store.addSignedHeads([signed(1, one?.hash), signed(1, 'f'.repeat(64), OTHER)]);
      await store.addSignedHeads([signed(2, two?.hash)]);
      expect(await store.signedHeads(0, 9)).toEqual([
        signed(1, one?.hash),
        signed(1, 'f'.repeat(64), OTHER),
        signed(2, two?.hash),
      ]);
      expect(await store.signedHeads(1, 1)).toEqual([signed(1, 'f'.repeat(64), OTHER)]);
      expect((await store.signedHeadsOf(JOB)).map(({ number, count }) => [number, count])).toEqual([
        [0, 1],
        [2, 2],
      ]);
      expect(await store.audit(JOB)).toBeUndefined();
      expect(await store.audit(OTHER)).toEqual({ seq: 0, fault: 'missing' });
      await store.addSignedHeads([signed(2, 'f'.repeat(64))]);
      expect(await store.audit(JOB)).toEqual({ seq: 1, fault: 'rewritten' });
    });

    it('keeps time stamps, each of a larger tree, and finds the first over a signed head', async () => {
      const stamp = (size: number) => ({
        ...{
          size,
          root: 'f'.repeat(64),
          at: 5,
          key: 'a key',
          signature: 'a signature',
          nonce: 'one',
          token: 'AAAA',
        },
      });
      expect(await store.lastStamp()).toBeUndefined();
      expect(await store.stampOver(0)).toBeUndefined();
      await store.addStamp(stamp(3));
      await store.addStamp(stamp(7));
      for (const size of [3, 7]) await expect(store.addStamp(stamp(size))).rejects.toThrow(StoreFailure);
      expect(await store.lastStamp()).toEqual(stamp(7));
      // A tree of three has the heads 0 to 2.
      for (const [number, size] of [
        [0, 3],
        [2, 3],
        [3, 7],
        [6, 7],
      ] as const)
        expect(await store.stampOver(number)).toEqual(stamp(size));
      expect(await store.stampOver(7)).toBeUndefined();
    });

    describe('keeps who read what,', () => {
      const HOUR = 1_700_000_000_000;
      const read = (more: Partial<Read> = {}): Read => ({
        ...{ hour: HOUR, log: JOB, what: 'record', role: 'watcher', key: 'a'.repeat(12) },
        ...{ reader: 'account', name: 'A. Example' },
        ...more,
      });
      const all = async () => (await store.readsAfter(0, 100)).map(({ number, ...one }) => one);

      it('each once, in the order in which it was noted, and gives it a page at a time from either end', async () => {
        const reads = [read(), read({ what: 'report' }), read({ log: OTHER }), read({ hour: HOUR + 1 })];
        await store.changeReads({ note: reads.slice(0, 2) });
        await store.changeReads({ note: [read(), ...reads.slice(1)] });
        expect(await all()).toEqual(reads);
        const numbers = (await store.readsAfter(0, 100)).map(({ number }) => number);
        const [one = 0, two = 0, three = 0, four = 0] = numbers;
        expect(numbers).toEqual([...new Set(numbers)].sort((a, b) => a - b));
        const of = async (found: Promise<KeptRead[]>) => (await found).map(({ number }) => number);
        expect(await of(store.readsAfter(one, 2))).toEqual([two, three]);
        expect(await of(store.readsBefore(four, 2))).toEqual([three, two]);
        expect(await of(store.readsBefore(four + 1, 100, JOB))).toEqual([four, two, one]);
        expect(await of(store.readsBefore(two, 100, JOB))).toEqual([one]);
      });

      it('knows readers apart by hour, log, kind, key and name', async () => {
        const reads = [
          read(),
          read({ hour: HOUR + 3_600_000 }),
          read({ log: '' }),
          read({ what: 'board' }),
          read({ key: 'b'.repeat(12) }),
          read({ name: 'B. Example' }),
          read({ reader: 'link', name: '' }),
        ];
        await store.changeReads({ note: reads });
        expect(await all()).toEqual(reads);
        expect(await store.readers()).toEqual(['A. Example', 'B. Example']);
      });

      it('without a name that is forgotten; where two are, one line says it', async () => {
        const others = [read({ what: 'board', name: 'B. Example' }), read({ reader: 'link', name: '' })];
        await store.changeReads({ note: [read(), read({ name: 'B. Example' }), ...others] });
        const nameless = read({ reader: 'forgotten', name: '' });
        await store.changeReads({ forget: 'A. Example' });
        expect(await all()).toEqual([nameless, read({ name: 'B. Example' }), ...others]);
        expect(await store.readers()).toEqual(['B. Example']);
        await store.changeReads({ forget: 'B. Example' });
        const stay = await all();
        expect(stay).toHaveLength(3);
        expect(stay).toEqual(expect.arrayContaining([nameless, { ...nameless, what: 'board' }, others[1]]));
        await store.changeReads({ forget: 'C. Example' });
        expect(await all()).toEqual(stay);
      });

      it('until it is told to end what is older, but what is younger than thirty days stays in any case', async () => {
        const now = Date.now();
        const days = (n: number) => now - n * 24 * 3_600_000;
        const [old, month, young] = [days(40), days(31), days(29)];
        const hours = async () => (await all()).map(({ hour }) => hour);
        await store.changeReads({ note: [old, month, young].map((hour) => read({ hour })) });
        await store.changeReads({ end: old });
        expect(await hours()).toEqual([old, month, young]);
        await store.changeReads({ end: old + 1 });
        expect(await hours()).toEqual([month, young]);
        await store.changeReads({ end: now + 1e9 });
        expect(await hours()).toEqual([young]);
      });
    });

    it('names every log that anything in it speaks of, once', async () => {
      await grow(['one', 'two']);
      await store.append(JOB, [], { issue: [{ token: digest('own'), role: 'panel' }] });
      await store.append(OTHER, [], { issue: [{ token: digest('token'), role: 'panel' }] });
      await store.keepSummary('job-three-003', { count: 1, hash: 'f'.repeat(64), body: '{}' });
      expect((await store.logs()).sort()).toEqual([JOB, 'job-three-003', OTHER].sort());
    });

    it('says that it is well', async () => {
      await expect(store.health()).resolves.toBeUndefined();
    });

    it('may be closed twice', async () => {
      await store.close();
      await expect(store.close()).resolves.toBeUndefined();
    });
  });
}

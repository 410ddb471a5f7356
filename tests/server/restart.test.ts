import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { systemClock } from '../../server/process/clock.ts';
import { DATABASE_FILE, openDataFolder } from '../../server/store/data-folder.ts';
import { chooseDriver } from '../../server/store/drivers.ts';
import { findFault } from '../../src/log/chain.ts';
import { enclosedIn } from '../../src/log/enclosure.ts';
import { JobRecord } from '../../src/protocol/jobs.ts';
import { Logged } from '../../src/protocol/site.ts';
import { picture } from '../photos/pictures.ts';
import { start } from './child.ts';
import { serve } from './house.ts';
import { bothIn, get, newId, Phone, post } from './phone.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-restart-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;
const newFolder = () => join(root, String(++folders));

const recordOf = async (url: string, token: string) =>
  JobRecord.parse(await (await get(url, '/api/record', token)).json());

describe('a server that stops', () => {
  // This proves that an acknowledgement is sent after the commit, and that a commit survives the process.
  // It proves nothing about a power cut: here the operating system runs on and writes what it holds.
  it.each([3, 12, 30])(
    'R27: killed with -9 after %i acknowledgements, it has lost none of those messages',
    async (enough) => {
      const data = newFolder();
      const first = await start(data);
      const { job, panel } = await bothIn(first.url);
      const ids = Array.from({ length: 50 }, newId);
      const acked = new Map<string, number>();
      const killed = new Promise<void>((resolve) => {
        panel.socket.on('message', (frame) => {
          const message = JSON.parse(String(frame));
          if (message.t !== 'ack') return;
          acked.set(message.id, message.seq);
          if (acked.size === enough) {
            first.child.kill('SIGKILL');
            resolve();
          }
        });
      });
      for (const [i, id] of ids.entries()) panel.remark(`note ${i}`, id);
      await killed;
      expect((await first.ended).signal).toBe('SIGKILL');
      await panel.closed;
      expect(acked.size).toBeGreaterThanOrEqual(enough);

      const second = await start(data);
      const { head, entries } = await recordOf(second.url, job.token);
      expect(findFault(entries, head)).toBeUndefined();
      for (const [id, seq] of acked) expect(entries[seq]).toMatchObject({ seq, ref: id });

      // The phone comes back and sends again what was not acknowledged. Nothing is logged twice.
      const again = await Phone.at(second.url, job.token, panel.entries.at(-1)?.seq ?? -1);
      for (const [i, id] of ids.entries()) if (!acked.has(id)) again.remark(`note ${i}`, id);
      for (const id of ids) if (!acked.has(id)) await again.ack(id);
      const after = await recordOf(second.url, job.token);
      const remarks = after.entries.flatMap((e) => (e.fact.type === 'remark' ? [e.fact.text] : []));
      expect(remarks).toEqual(ids.map((_, i) => `note ${i}`));
      expect(findFault(after.entries, after.head)).toBeUndefined();
      // What this phone got over both connections is the whole log, without a gap.
      const seen = [...panel.entries, ...again.entries].filter((e) => e.seq < after.head.count);
      expect(seen).toEqual(after.entries.slice(0, seen.length));
    },
  );

  it('R54: killed with -9 while photos come in, it has every picture that it acknowledged, and no entry without its own', async () => {
    const data = newFolder();
    const first = await start(data);
    const { job, panel } = await bothIn(first.url);
    const acked: number[] = [];
    const send = async () => {
      const query = `id=${newId()}&shows=other`;
      const headers = { authorization: `Bearer ${job.token}` };
      const body = new Uint8Array(await picture());
      const response = await fetch(`${first.url}/api/photo?${query}`, { method: 'POST', headers, body });
      acked.push(Logged.parse(await response.json()).seq);
      if (acked.length === 5) first.child.kill('SIGKILL');
    };
    await Promise.allSettled(Array.from({ length: 12 }, send));
    await first.ended;
    await panel.closed;
    expect(acked.length).toBeGreaterThanOrEqual(5);

    const second = await start(data);
    const { entries } = await recordOf(second.url, job.token);
    const named = [...enclosedIn(entries).keys()];
    expect(named).toEqual(expect.arrayContaining(acked));
    for (const seq of named)
      expect((await get(second.url, `/api/photo?seq=${seq}`, job.token)).status).toBe(200);
  });

  it('R27: when asked to stop, it sends the phones away and ends without error; the job goes on where it was', async () => {
    const data = newFolder();
    const first = await start(data);
    const { job, panel, emitter, emitterToken } = await bothIn(first.url);
    await panel.ack(panel.say('forty two'));
    const order = await emitter.entry(
      (e) => e.fact.type === 'instruction' && e.fact.advice.action.kind === 're-aim',
    );
    first.child.kill('SIGTERM');
    expect((await emitter.closed).code).toBe(1001);
    expect(await first.ended).toMatchObject({ code: 0, err: '' });

    const second = await start(data);
    const back = await Phone.at(second.url, emitterToken, order.seq);
    await Phone.at(second.url, job.token, order.seq);
    // Nothing was said meanwhile, so there is nothing new, and the instruction still holds.
    expect(back.entries).toEqual([]);
    await back.ack(back.send({ t: 'say', via: 'button', text: 'done', re: order.seq }));
    await back.entry((e) => e.fact.type === 're-aimed');
  });

  it('R27: a watcher who looks at a job that is not live adds nothing to its log', async () => {
    const data = newFolder();
    const first = await serve({ store: openDataFolder(data) });
    const { job } = await bothIn(first.url);
    await first.close();

    // Long after every instruction has expired.
    const later = { ...systemClock, now: () => Date.now() + 24 * 60 * 60_000 };
    const second = await serve({ store: openDataFolder(data), clock: later });
    const { head } = await recordOf(second.url, job.watch);
    const watcher = await Phone.at(second.url, job.watch);
    await watcher.next('caught-up');
    expect((await recordOf(second.url, job.watch)).head).toEqual(head);
    await (await Phone.at(second.url, job.token)).entry((e) => e.fact.type === 'withdrawn');
  });

  it('R27: an invitation and a lost seat still hold after a restart', async () => {
    const data = newFolder();
    const first = await serve({ store: openDataFolder(data) });
    const { job, panel, emitter, emitterToken } = await bothIn(first.url);
    await emitter.hangUp();
    await panel.presence((p) => p.emitter === 'away');
    panel.send({ t: 'invite', seat: 'emitter' });
    const { invite } = await panel.next('invite');
    await first.close();

    const second = await serve({ store: openDataFolder(data) });
    expect((await post(second.url, '/api/join', { code: invite.code })).status).toBe(200);
    expect((await get(second.url, '/api/record', emitterToken)).status).toBe(401);
    expect((await get(second.url, '/api/record', job.watch)).status).toBe(200);
  });
});

describe('a log that someone has tampered with', () => {
  it('R28: opens read-only up to the fault, and says so to anyone who wants to write', async () => {
    const data = newFolder();
    const first = await serve({ store: openDataFolder(data) });
    const { job, panel } = await bothIn(first.url);
    await panel.ack(panel.remark('true words'));
    const target = (await panel.entry((e) => e.fact.type === 'remark')).seq;
    await panel.ack(panel.remark('more words'));
    const sound = await bothIn(first.url);
    await first.close();

    const db = chooseDriver().open(join(data, DATABASE_FILE));
    db.exec('DROP TRIGGER entries_stay');
    db.prepare("UPDATE entries SET body = replace(body, 'true', 'false') WHERE job = ? AND seq = ?").run(
      job.job,
      target,
    );
    db.close();

    // The trigger is removed. It does not protect the log from a person who can write the file.
    const { url } = await serve({ store: openDataFolder(data) });
    const again = await Phone.at(url, job.token);
    expect(again.entries.at(-1)?.seq).toBe(target - 1);
    for (const id of [again.say('forty two'), again.remark('hello?')]) {
      const refusal = await again.refusal(id);
      expect(refusal.reason).toBe('log-broken');
      expect(refusal.text).toContain(`entry ${target}`);
    }
    // The record is given as it is stored, so that everyone can see the fault.
    const { head, entries } = await recordOf(url, job.token);
    expect(findFault(entries, head)).toEqual({ seq: target, fault: 'hash' });

    const other = await Phone.at(url, sound.job.token);
    await other.ack(other.remark('the other job goes on'));
  });
});

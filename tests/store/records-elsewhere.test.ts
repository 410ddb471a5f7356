import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { backUp } from '../../server/backup/backup.ts';
import { forgetIn } from '../../server/forget/forget.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import { noteRecordsElsewhere, noteRecordsHere } from '../../server/store/records-elsewhere.ts';
import { run } from '../server/child.ts';

const DATABASE = 'postgres://crew@127.0.0.1/ladderline';

it('a data folder whose records are in a database is not taken for all of them, though an older file lies in it', async () => {
  const root = mkdtempSync(join(tmpdir(), 'ladderline-elsewhere-'));
  onTestFinished(() => rmSync(root, { recursive: true }));
  const [data, into] = [join(root, 'data'), join(root, 'backups')];
  await openDataFolder(data).close();
  noteRecordsElsewhere(data, DATABASE);
  const said = `the records of ${data} are in ${DATABASE}, says its file records-elsewhere: `;
  const forget = () => forgetIn(data, { name: 'B. Example', why: 'Asked for', isSure: true, at: 5 });
  await expect(backUp(data, into, 5)).rejects.toThrow(`${said}back that up with the tools of PostgreSQL`);
  expect(existsSync(into)).toBe(false);
  await expect(forget()).rejects.toThrow(`${said}name it with --store ${DATABASE}.`);
  const { code, err } = await run(['--data', data, '--port', '0', '--tls', 'off']).ended;
  expect([code, err]).toEqual([1, expect.stringContaining(`${said}start with --store`)]);

  noteRecordsHere(data);
  expect(await forget()).toEqual({ records: [], readers: [] });
  expect((await backUp(data, into, 5)).manifest.logs).toBe(0);
});

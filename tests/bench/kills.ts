import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findFault } from '../../src/log/chain.ts';
import { JobRecord } from '../../src/protocol/jobs.ts';
import { get, newId, openJob, Phone } from '../server/phone.ts';

/**
 * The built server, killed with -9 while a phone sends (`npm run bench:kills -- 100`: so often), and started again on the
 * same data. It shows that an acknowledgement comes after the commit and that a commit survives the process. A power cut
 * is another thing: there the operating system dies too, and this cannot cut the power of the machine it runs on.
 */
const KILLS = Number(process.argv[2] ?? 1_000);
/** A job is taken up again so often before a new one is opened. */
const A_JOB = 40;
const MESSAGES = 30;
const MOST_TRIES = 5;
// On a machine that others use, too.
Phone.patienceMs = 300_000;

const data = mkdtempSync(join(tmpdir(), 'ladderline-kills-'));
const ARGS = ['dist/server/main.js', '--port', '0', '--host', '127.0.0.1', '--tls', 'off', '--data', data];

async function start() {
  const child = spawn(process.execPath, ARGS, { env: { ...process.env, LADDERLINE_SPEECH: 'off' } });
  let out = '';
  for (;;) {
    const [text] = await once(child.stdout, 'data');
    out += text;
    const url = /This machine +(\S+)/.exec(out)?.[1];
    if (url) return { child, url };
  }
}

let acknowledged = 0;
let resent = 0;
const faults: string[] = [];
let job: { token: string } | undefined;
/** What was sent to the job, and where in the log it was acknowledged. */
let sent = new Map<string, number | undefined>();

for (let kill = 0; kill < KILLS; kill++) {
  const { child, url } = await start();
  const ended = once(child, 'exit');
  if (!job || kill % A_JOB === 0) {
    job = await openJob(url);
    sent = new Map();
  }
  const phone = await comeIn(url, job.token);
  const log = new Map(phone.entries.map(({ ref, seq }) => [ref, seq]));
  const lost: string[] = [];
  for (const [id, seq] of sent) {
    if (seq !== undefined && log.get(id) !== seq) faults.push(`kill ${kill}: message ${id} is not at ${seq}`);
    if (seq !== undefined) continue;
    phone.remark(`note ${id}`, id);
    lost.push(id);
  }
  for (const id of lost) sent.set(id, await phone.ack(id));
  resent += lost.length;
  const enough = Math.floor(Math.random() * MESSAGES);
  let came = 0;
  await new Promise<void>((killed) => {
    phone.socket.on('message', (frame) => {
      const message = JSON.parse(String(frame));
      if (message.t !== 'ack') return;
      sent.set(message.id, message.seq);
      acknowledged += 1;
      came += 1;
      if (came !== enough) return;
      child.kill('SIGKILL');
      killed();
    });
    for (let i = 0; i < MESSAGES; i++) {
      const id = newId();
      sent.set(id, undefined);
      phone.remark(`note ${id}`, id);
    }
    if (enough === 0) {
      child.kill('SIGKILL');
      killed();
    }
  });
  await ended;
  await phone.closed;
  if ((kill + 1) % A_JOB === 0 || kill === KILLS - 1) await hold(job.token, kill);
}

/** As a phone does: where a busy machine let it come too late, it comes again. */
async function comeIn(url: string, token: string): Promise<Phone> {
  for (let tries = 1; ; tries++) {
    try {
      return await Phone.at(url, token);
    } catch (error) {
      if (tries === MOST_TRIES) throw error;
    }
  }
}

/** Holds the whole log against what was acknowledged, and every message that was sent against the log. */
async function hold(token: string, kill: number): Promise<void> {
  const { child, url } = await start();
  const phone = await comeIn(url, token);
  for (const [id, seq] of sent) if (seq === undefined) await phone.ack(phone.remark(`note ${id}`, id));
  const { head, entries } = JobRecord.parse(await (await get(url, '/api/record', token)).json());
  const fault = findFault(entries, head);
  if (fault) faults.push(`kill ${kill}: entry ${fault.seq} ${fault.fault}`);
  for (const id of sent.keys()) {
    const places = entries.filter(({ ref }) => ref === id).length;
    if (places !== 1) faults.push(`kill ${kill}: message ${id} is in the log ${places} times`);
  }
  child.kill('SIGKILL');
  await once(child, 'exit');
  console.log(`${kill + 1} kills, ${acknowledged} acknowledged, ${faults.length} faults`);
}

rmSync(data, { recursive: true });
for (const fault of faults) console.log(fault);
console.log(
  `${KILLS} kills; ${acknowledged} messages were acknowledged, ${resent} sent again because they were not; ${faults.length} faults.`,
);
process.exit(faults.length > 0 ? 1 : 0);

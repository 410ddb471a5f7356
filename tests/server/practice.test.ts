import { describe, expect, it } from 'vitest';
import { MemoryStore } from '../../server/store/memory.ts';
import type { Seat } from '../../src/model/facts.ts';
import type { Practice } from '../../src/model/practice.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { hallOf } from '../../src/practice/hall.ts';
import { shownBy } from '../../src/practice/meter.ts';
import { practiceSetup } from '../../src/practice/pair.ts';
import { JobOpened, Joined } from '../../src/protocol/jobs.ts';
import { serve } from './house.ts';
import { Phone } from './phone.ts';

const FLOODED: Practice = { seed: 7, troubles: ['flooded'] };

async function crew(setup: JobSetup) {
  const store = new MemoryStore();
  const { url } = await serve({ store });
  const post = (path: string, body: object) =>
    fetch(`${url}/api/${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
  const opened = JobOpened.parse(await (await post('jobs', { setup, device: 'Phone' })).json());
  const joined = Joined.parse(
    await (await post('join', { code: opened.invite.code, device: 'Phone' })).json(),
  );
  const tokens: Record<Seat, string> = { panel: opened.token, emitter: joined.token };
  const phone = (seat: Seat) => Phone.at(url, tokens[seat]);
  const get = (path: string) =>
    fetch(`${url}/api/${path}`, { headers: { authorization: `Bearer ${opened.token}` } });
  return { phone, get, entries: () => store.read(opened.job, -1, 10_000) };
}

describe('R80: practice on two phones', () => {
  it('hands at the emitter move the meter of the panel, and only they', async () => {
    const { phone, entries } = await crew(practiceSetup(FLOODED));
    const emitter = await phone('emitter');
    const shown = async (later: number) => {
      const log = await entries();
      const hall = hallOf(log);
      return hall && shownBy(hall, (log.at(-1)?.at ?? 0) + later);
    };
    expect(await shown(3_000)).toEqual({ kind: 'saturated' });
    await emitter.ack(emitter.send({ t: 'say', via: 'button', text: 'gain down' }));
    expect(await shown(3_000)).toEqual({ kind: 'saturated' });
    const seq = await emitter.ack(emitter.send({ t: 'practise', act: { did: 'gain', db: 14 } }));
    expect((await entries())[seq]).toMatchObject({
      actor: 'emitter',
      fact: { type: 'practised', act: { did: 'gain', db: 14 } },
    });
    expect(await shown(3_000)).toMatchObject({ kind: 'value' });
  });

  it('is refused in a job that is not practice', async () => {
    const { practice: _, ...real } = practiceSetup(FLOODED);
    const { phone, entries } = await crew(real);
    const emitter = await phone('emitter');
    const before = (await entries()).length;
    const sent = emitter.send({ t: 'practise', act: { did: 'aim' } });
    expect(await emitter.refusal(sent)).toMatchObject({ reason: 'bad-target' });
    expect((await entries()).length).toBe(before);
  });

  it('nobody can say that words were misheard', async () => {
    const { phone } = await crew(practiceSetup(FLOODED));
    const panel = await phone('panel');
    const forged = { t: 'practise', act: { did: 'misheard', meant: '50' } } as unknown as Parameters<
      typeof panel.send
    >[0];
    expect(await panel.refusal(panel.send(forged))).toMatchObject({ reason: 'bad-message' });
  });
});

const KEPT = ['export.jsonl', 'export.csv', 'export.zip', 'report.pdf'];

describe('R81: a practice job leaves no record', () => {
  it.each(KEPT)('%s is refused, in words', async (path) => {
    const { get } = await crew(practiceSetup(FLOODED));
    const answer = await get(path);
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(await answer.json()).toMatchObject({ text: expect.stringContaining('practice') });
  });

  it('the same files are there for a job that is not practice', async () => {
    const { practice: _, ...real } = practiceSetup(FLOODED);
    const { get } = await crew(real);
    for (const path of KEPT) expect((await get(path)).status).toBe(200);
  });
});

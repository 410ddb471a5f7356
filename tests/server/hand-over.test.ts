import { describe, expect, it } from 'vitest';
import { layDown, type PlayedSite } from '../../server/demo/site-fixture.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { Seat } from '../../src/model/facts.ts';
import { STEPS_OF_EVERY_VISIT } from '../../src/phrases/steps.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { serve } from './house.ts';
import { newId, Phone } from './phone.ts';
import { demo, tokenOf, unsigned, unsignedWithSteps, visitTo } from './played-site.ts';

const { job } = visitTo('S3');

async function crew(played: PlayedSite) {
  const store = new MemoryStore();
  await layDown(store, played);
  const { url } = await serve({ store });
  const phone = async (seat: Seat) => Phone.at(url, await tokenOf(store, job, seat));
  const state = async () => (await store.read(job, -1, 10_000)).reduce(fold, EMPTY);
  return { phone, state, entries: () => store.read(job, -1, 10_000) };
}

describe('R50: the hand-over from a phone of the crew', () => {
  it.each(Seat.options)('is written once from the %s, and the entry names the seat', async (seat) => {
    const { phone, state, entries } = await crew(unsigned('S3'));
    const line = await phone(seat);
    const id = newId();
    const fact = { type: 'as-left', values: { receiverSerial: 'R-0012' } } as const;
    const seq = await line.ack(line.send({ t: 'hand-over', id, fact }));
    expect(await line.ack(line.send({ t: 'hand-over', id, fact }))).toBe(seq);
    expect((await entries())[seq]).toMatchObject({ actor: seat, fact });
    expect((await state()).handOver.asLeft).toMatchObject({ receiverSerial: 'R-0012' });
  });

  it('answers a step of the visit, and refuses one that it has not', async () => {
    const { phone, state } = await crew(unsignedWithSteps('S3', STEPS_OF_EVERY_VISIT));
    const line = await phone('panel');
    const cause = 'Battery of the panel disconnected';
    await line.ack(line.send({ t: 'hand-over', fact: { type: 'step', cause, result: 'failed' } }));
    expect((await state()).handOver.steps[cause]).toMatchObject({ result: 'failed' });
    const other = { type: 'step', cause: 'Something else done', result: 'passed' } as const;
    expect(await line.refusal(line.send({ t: 'hand-over', fact: other }))).toMatchObject({
      reason: 'bad-target',
    });
  });

  it('shows as a change of what was signed', async () => {
    const { phone, state } = await crew(demo);
    expect((await state()).changedBy).toBeUndefined();
    const line = await phone('panel');
    const seq = await line.ack(
      line.send({ t: 'hand-over', fact: { type: 'as-left', values: { gain: '3' } } }),
    );
    expect((await state()).changedBy).toBe(seq);
  });

  it('is refused before the acceptance, and where nothing is filled in', async () => {
    const early: PlayedSite = {
      site: demo.site,
      visits: demo.visits.map(({ job, entries }) => ({ job, entries: entries.slice(0, 4) })),
    };
    const values = { gain: '3' };
    const before = await (await crew(early)).phone('panel');
    const sent = before.send({ t: 'hand-over', fact: { type: 'as-left', values } });
    expect(await before.refusal(sent)).toMatchObject({ reason: 'bad-target' });
    const after = await (await crew(unsigned('S3'))).phone('panel');
    const empty = after.send({ t: 'hand-over', fact: { type: 'as-left', values: {} } });
    expect(await after.refusal(empty)).toMatchObject({ reason: 'bad-message' });
  });
});

import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { serve } from './house.ts';
import { bothIn, get } from './phone.ts';

const heard = (text: string, confidence: number, id: string) => ({
  t: 'say' as const,
  id,
  via: 'voice' as const,
  text,
  confidence,
  alternatives: [{ text, confidence }],
});

describe('words that a phone has recognised itself', () => {
  it('R41: are taken when sure, asked about when not, and logged as heard', async () => {
    const { url } = await serve();
    const { panel } = await bothIn(url);
    await panel.ack(panel.send(heard('four two', 0.97, 'heard-sure-1')));
    await panel.ack(panel.send(heard('five zero', 0.5, 'heard-half-1')));
    const facts = panel.entries.map(({ fact }) => fact);
    expect(facts).toContainEqual(
      expect.objectContaining({ type: 'said', via: 'voice', text: 'four two', confidence: 0.97 }),
    );
    const readings = facts.filter((fact) => fact.type === 'reading');
    expect(readings.map((fact) => fact.reading)).toEqual([expect.objectContaining({ value: 42 })]);
    expect(facts.some((fact) => fact.type === 'query')).toBe(true);
  });

  it('R41: are refused without a confidence, and typed words are refused with one', async () => {
    const { url } = await serve();
    const { panel } = await bothIn(url);
    const { confidence: _, ...unsure } = heard('four two', 0.9, 'no-confidence-1');
    for (const bad of [unsure, { ...heard('four two', 0.9, 'typed-sure-1'), via: 'typed' as const }]) {
      panel.send(bad as never);
      expect(await panel.refusal(bad.id)).toMatchObject({ reason: 'bad-message' });
    }
  });

  it('need the model, whose files the server gives out, and no other file of its folder', async () => {
    const { url } = await serve();
    const model = await get(url, '/speech-model/onnx/model_quantized.onnx');
    expect(model.status).toBe(200);
    const bytes = await model.arrayBuffer();
    expect(bytes.byteLength).toBeGreaterThan(1_000_000);
    const listed = await (await get(url, '/speech-model/files.json')).json();
    expect(listed).toContainEqual({
      url: '/speech-model/onnx/model_quantized.onnx',
      revision: createHash('sha256').update(Buffer.from(bytes)).digest('hex'),
    });
    for (const { url: path } of listed as { url: string }[]) {
      const file = await get(url, path);
      expect(file.status).toBe(200);
      // A server that stops waits for what is still being fetched.
      await file.arrayBuffer();
    }
    for (const file of ['README.md', '../worker.ts', '%2e%2e/worker.ts']) {
      expect((await get(url, `/speech-model/${file}`)).status).toBe(404);
    }
  });
});

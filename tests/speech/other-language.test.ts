import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadRecogniser } from '../../server/speech/recogniser.ts';
import { openTranscriber } from '../../server/speech/start.ts';
import { decide } from '../../src/conversation/decide.ts';
import { serve } from '../server/house.ts';
import { bothIn, newId } from '../server/phone.ts';
import { writeLetters } from './letters-folder.ts';

const sound = Float32Array.from({ length: 16_000 }, (_, i) => 0.3 * Math.sin(i / 8));

function folderOf(text: string, language?: string, more?: string): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'ladderline-letters-')), 'model');
  writeLetters(folder, text, language, more);
  return folder;
}

const reading = (value: number) => [{ kind: 'reading', reading: { kind: 'value', value } }];

// What these words mean: any dictionary of Spanish, German and French.
describe('a model whose folder says which language it hears', () => {
  it.each([
    ['es', 'ciento cuatro', '', 104],
    ['de', 'hundert vier', 'äöüß', 104],
    ['fr', 'cent quatre', '', 104],
  ])('is read with the sentences of "%s": "%s"', async (language, text, more, value) => {
    const { hear, learn } = await loadRecogniser(folderOf(text, language, more));
    const heard = await hear(sound);
    expect(heard).toMatchObject({ text, language });
    expect(decide({ via: 'voice', ...heard })).toEqual({ kind: 'taken', intents: reading(value) });
    // Ten digits are read in English.
    expect(learn).toBeUndefined();
  });

  it('finds no sentence in the words of another language', async () => {
    const { hear } = await loadRecogniser(folderOf('one hundred four', 'es'));
    expect(decide({ via: 'voice', ...(await hear(sound)) }).kind).not.toBe('taken');
  });

  it('hears a note for the record as its letters', async () => {
    const { hear } = await loadRecogniser(folderOf('nota luna verde', 'es'));
    const { intents } = decide({ via: 'voice', ...(await hear(sound)) }) as { intents?: unknown };
    expect(intents).toEqual([{ kind: 'remark', text: 'luna verde' }]);
  });

  it('is English where it says nothing, or says so', async () => {
    for (const language of [undefined, 'en']) {
      const heard = await (await loadRecogniser(folderOf('one hundred four', language))).hear(sound);
      expect(heard.text).toBe('one hundred four');
      expect(heard.language).toBeUndefined();
    }
  });

  it('says so where there are no sentences of that language', async () => {
    await expect(loadRecogniser(folderOf('cento e quatro', 'pt'))).rejects.toThrow(
      /hears "pt", .* en, es, de, fr only/,
    );
  });

  it('is taken by a server: what is said is logged in its language, and means what it means there', async () => {
    const modelFolder = folderOf('ciento cuatro', 'es');
    const transcriber = openTranscriber(modelFolder);
    await transcriber.ready;
    const { url } = await serve({ transcriber, modelFolder });
    const { panel } = await bothIn(url);
    const id = newId();
    panel.send({ t: 'talk', id });
    panel.raw(Buffer.from(Int16Array.from(sound, (x) => x * 32_767).buffer));
    panel.send({ t: 'talk-end', id });
    const seq = await panel.ack(id);
    expect((await panel.entry((e) => e.seq === seq)).fact).toMatchObject({
      type: 'said',
      via: 'voice',
      text: 'ciento cuatro',
      language: 'es',
    });
    // A phone hears by English sentences only: it gets no such model.
    expect((await fetch(`${url}/speech-model/tokenizer.json`)).status).toBe(404);
  }, 60_000);
});

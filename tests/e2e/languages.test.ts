import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_PAIR } from '../../server/demo/site.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { speakNumber } from '../../src/grammar/speak.ts';
import { translator } from '../../src/languages/translate.ts';
import type { TypedLanguage } from '../../src/model/language.ts';
import { createBeamPair, shortfallDb } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { LANGUAGES } from '../languages/languages.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { Hall, press } from './hall.ts';
import { logOf, stateOf } from './job-log.ts';

const LONGEST_ALIGNMENT_MS = 150_000;

/** British English: in it all is written. */
const ENGLISH = { code: 'en-GB', typed: undefined, said: (english: string) => english, spoken: undefined };

/** A language as one phone of a crew has it. */
function phoneIn(code: TypedLanguage) {
  const found = LANGUAGES.find((each) => each.code === code);
  if (!found) throw new Error(`no such language: ${code}`);
  const translate = translator(found.language);
  const said = (english: string): string => translate(english) ?? expect.fail(`not in ${code}: ${english}`);
  return { code, typed: code, said, spoken: found.language.spoken };
}

const CREWS = [
  ...LANGUAGES.map(({ code }) => ({ crew: `in ${code}`, panel: phoneIn(code), emitter: phoneIn(code) })),
  { crew: 'with English at the panel and es on the ladder', panel: ENGLISH, emitter: phoneIn('es') },
];

/** Two phones, each set to a language, and readings typed in the words of the panel's. */
describe.skipIf(!CHROMIUM).each(CREWS)('a crew $crew', ({ panel: atPanel, emitter: atEmitter }) => {
  const hall = new Hall(createBeamPair({ ...DEMO_PAIR, lagMs: 50 }), createRng(7), atEmitter.said);
  const store = new MemoryStore();
  let server: RunningServer;
  let browser: Browser;
  let panel: Page;
  let emitter: Page;
  const english = new Set<string>();

  beforeAll(async () => {
    server = await startServer({ store });
    browser = await launch();
    const open = async ({ code }: { code: string }) => {
      const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, locale: code };
      return (await browser.newContext(phone)).newPage();
    };
    panel = await open(atPanel);
    emitter = await open(atEmitter);
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  const log = () => logOf(store);

  /** What a page had to leave in English, it marks as English. Names of languages are so on purpose. */
  async function lookForEnglish(): Promise<void> {
    for (const page of [panel, emitter])
      for (const text of await page.locator('[lang=en]:not(.languages *)').allTextContents())
        if (text) english.add(text);
  }

  it('joins', async () => {
    await panel.goto(`${server.url}/panel#new`);
    const form = panel.locator('form.start');
    await form.locator('input').nth(0).fill('Quayside Hall 3');
    await form.locator('input').nth(1).fill('B2');
    await form.locator('select').nth(2).selectOption({ index: 1 });
    await form.locator('summary').first().click();
    await form.locator('input[inputmode=decimal]').nth(1).fill('0.4');
    await form.locator('input[inputmode=decimal]').nth(2).fill('1');
    await lookForEnglish();
    await form.locator('button.main').click();
    await press(panel, atPanel.said('Understood'));
    await panel.locator('.square svg').waitFor();
    expect(await panel.locator('html').getAttribute('lang')).toBe(atPanel.code);
    await emitter.goto(`${server.url}/join`);
    await emitter.locator('#code').fill((await panel.locator('.invite-code').textContent()) ?? '');
    await lookForEnglish();
    await emitter.locator('form.join button.main').click();
    await press(emitter, atEmitter.said('Understood'));
    await press(emitter, atEmitter.said('Upright'));
    expect(await emitter.locator('html').getAttribute('lang')).toBe(atEmitter.code);
  }, 60_000);

  it(
    'is coached to an accepted alignment, each phone in its own words',
    async () => {
      const end = Date.now() + LONGEST_ALIGNMENT_MS;
      let answered = -1;
      for (;;) {
        if (Date.now() > end) expect.fail('the alignment was not accepted in time');
        const { instruction, accepted } = await stateOf(store);
        if (accepted) break;
        if (instruction && instruction.seq !== answered) {
          const { action } = instruction.advice;
          if (action.kind !== 'hold')
            for (const [page, { said }] of [
              [panel, atPanel],
              [emitter, atEmitter],
            ] as const)
              await page.getByRole('heading', { name: said(instruction.show) }).waitFor();
          await lookForEnglish();
          answered = instruction.seq;
          if (action.kind === 'offer-accept') await press(panel, atPanel.said('Accept'));
          else if (action.kind === 'read') {
            const shown = Number(hall.meterShows());
            const words = Number.isNaN(shown)
              ? atPanel.said(hall.meterShows())
              : speakNumber(shown, {}, atPanel.spoken);
            await panel.locator('.say-box input').fill(words);
            await panel.locator('.say-box button.main').click();
          } else if (action.kind !== 'hold') await hall.workAt(emitter, instruction);
        }
        await new Promise((resolve) => setTimeout(resolve, 50));
      }
      expect(shortfallDb(hall.pair)).toBeLessThan(0.2);
      const typed = (await log()).flatMap(({ fact }) =>
        fact.type === 'said' && fact.via === 'typed' ? [fact.language] : [],
      );
      expect(new Set(typed)).toEqual(new Set([atPanel.typed]));
      expect([...english]).toEqual([]);
    },
    LONGEST_ALIGNMENT_MS + 20_000,
  );
});

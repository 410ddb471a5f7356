import { mkdtempSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { translator } from '../../src/languages/translate.ts';
import { CHROMIUM, launch } from '../e2e/chromium.ts';
import { type ScreenState, screens } from '../e2e/screens/states.ts';
import { faultsAt, keyboardFaults, open, resize, SIZES, type Size, violations } from '../e2e/screens/walk.ts';
import { LANGUAGES } from '../languages/languages.ts';

/**
 * Every screen in every size, with text of usual and of double size: what a program can see of cut or overlapping text
 * and small targets, what axe-core finds, and what the keyboard does not reach. Then one picture of each, and
 * sheets of them, in a folder outside the repository. `-- NAME` takes only the screens whose name matches it, and
 * `-- NAME LANGUAGE` draws them in that language ("de"); what it then still finds in English is told too. Build the client
 * first.
 */
if (!CHROMIUM) throw new Error('no Chromium was found');
const only = new RegExp(process.argv[2] ?? '');
const locale = process.argv[3];
const spoken = locale === undefined ? undefined : LANGUAGES.find(({ code }) => code === locale);
if (locale !== undefined && !spoken) throw new Error(`no such language: ${locale}`);
const translate = spoken && translator(spoken.language);
const folder = mkdtempSync(join(tmpdir(), 'ladderline-screens-'));
const { server, states, close } = await screens((english) => translate?.(english) ?? english);
const wanted = states.filter(({ name }) => only.test(name));
let browser = await launch();

/** What is to be told of one screen; its pictures lie in the folder then. */
async function lookAt(state: ScreenState): Promise<string[]> {
  const found: string[] = [];
  const page = await open(browser, server.url, state, { locale });
  for (const size of SIZES) {
    const at = `${size.width}×${size.height} ${size.text * 100} %`;
    for (const { kind, what } of await faultsAt(page, state, size)) found.push(`${at}: ${kind}: ${what}`);
    await page.screenshot({ path: join(folder, pictureOf(state.name, size)) });
  }
  await resize(page, { width: 390, height: 844, text: 1 });
  if (locale)
    for (const what of await page.locator('[lang=en]:not(.languages *)').allTextContents())
      found.push(`in English: ${what}`);
  for (const what of await violations(page)) found.push(`axe: ${what}`);
  await page.emulateMedia({ colorScheme: 'dark' });
  for (const what of await violations(page)) found.push(`dark, axe: ${what}`);
  for (const what of await keyboardFaults(page)) found.push(`keyboard: ${what}`);
  await page.context().close();
  return found;
}

/** A browser that has died is replaced, once: the second time the screen itself is what ends it. */
async function withBrowser<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (browser.isConnected()) throw error;
    console.error('The browser has ended. A new one goes on.');
    browser = await launch();
    return work();
  }
}

/** All pictures of some screens on one sheet. */
async function layOut(names: readonly string[], sheet: string): Promise<void> {
  const pictures = names.flatMap((name) =>
    SIZES.map((size) => {
      const caption = `${name} ${size.width} ${size.text * 100} %`;
      const file = pictureOf(name, size);
      return `<figure><img src="${file}" alt="" height="300"><figcaption>${caption}</figcaption></figure>`;
    }),
  );
  const style = 'body{font:12px sans-serif}figure{display:inline-block;margin:6px}';
  const html = join(folder, `${sheet}.html`);
  await writeFile(html, `<style>${style}</style>${pictures.join('')}`);
  const page = await browser.newPage({ viewport: { width: 1600, height: 900 } });
  await page.goto(`file://${html}`);
  await page.screenshot({ path: join(folder, `${sheet}.png`), fullPage: true });
  await page.close();
}

const pictureOf = (name: string, { width, text }: Size): string => `${name}-${width}-${text}.png`;

let count = 0;
const say = (line: string) => {
  count++;
  console.log(line);
};
for (const state of wanted) {
  try {
    for (const what of await withBrowser(() => lookAt(state))) say(`${state.name}, ${what}`);
  } catch (error) {
    say(`${state.name}, not looked at: ${(error as Error).message.split('\n')[0]}`);
  }
}
// A sheet of all would be too large a picture.
const ON_A_SHEET = 8;
for (let from = 0; from < wanted.length; from += ON_A_SHEET) {
  const names = wanted.slice(from, from + ON_A_SHEET).map(({ name }) => name);
  await withBrowser(() => layOut(names, `sheet-${from / ON_A_SHEET + 1}`)).catch((error: Error) =>
    console.error(`A sheet was not drawn: ${error.message}`),
  );
}
await browser.close();
await close();
console.log(
  `${wanted.length} screens in ${SIZES.length} sizes: ${count} faults. Pictures and sheets: ${folder}`,
);

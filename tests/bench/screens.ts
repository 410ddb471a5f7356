import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { translator } from '../../src/languages/translate.ts';
import { CHROMIUM, launch } from '../e2e/chromium.ts';
import { screens } from '../e2e/screens/states.ts';
import { faultsAt, keyboardFaults, open, resize, SIZES, violations } from '../e2e/screens/walk.ts';
import { LANGUAGES } from '../languages/languages.ts';

/**
 * Every screen in every size, with text of usual and of double size: what a program can see of cut or overlapping text
 * and small targets, what axe-core finds, and what the keyboard does not reach. Then one picture of each, and all of
 * them on one sheet, in a folder outside the repository. `-- NAME` takes only the screens whose name matches it, and
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
const browser = await launch();
const wanted = states.filter(({ name }) => only.test(name));
let count = 0;
const say = (line: string) => {
  count++;
  console.log(line);
};
for (const state of wanted) {
  const page = await open(browser, server.url, state, { locale });
  for (const size of SIZES) {
    const at = `${size.width}×${size.height} ${size.text * 100} %`;
    for (const { kind, what } of await faultsAt(page, state, size))
      say(`${state.name}, ${at}: ${kind}: ${what}`);
    const file = `${state.name}-${size.width}-${size.text}.png`;
    await page.screenshot({ path: join(folder, file) });
  }
  await resize(page, { width: 390, height: 844, text: 1 });
  if (locale)
    for (const what of await page.locator('[lang=en]:not(.languages *)').allTextContents())
      say(`${state.name}, in English: ${what}`);
  for (const what of await violations(page)) say(`${state.name}, axe: ${what}`);
  await page.emulateMedia({ colorScheme: 'dark' });
  for (const what of await violations(page)) say(`${state.name}, dark, axe: ${what}`);
  for (const what of await keyboardFaults(page)) say(`${state.name}, keyboard: ${what}`);
  await page.context().close();
}
const sheet = await browser.newPage({ viewport: { width: 1600, height: 900 } });
const pictures = wanted.flatMap(({ name }) =>
  SIZES.map(({ width, text }) => {
    const file = `file://${folder}/${name}-${width}-${text}.png`;
    return `<figure><img src="${file}" height="300"><figcaption>${name} ${width} ${text * 100} %</figcaption></figure>`;
  }),
);
const style = 'body{font:12px sans-serif}figure{display:inline-block;margin:6px}';
const html = join(folder, 'sheet.html');
await import('node:fs/promises').then(({ writeFile }) =>
  writeFile(html, `<style>${style}</style>${pictures.join('')}`),
);
await sheet.goto(`file://${html}`);
await sheet.screenshot({ path: join(folder, 'sheet.png'), fullPage: true });
await browser.close();
await close();
console.log(
  `${wanted.length} screens in ${SIZES.length} sizes: ${count} faults. Pictures: ${folder}/sheet.png`,
);

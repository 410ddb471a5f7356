import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import puppeteer, { type Browser, type Page } from 'puppeteer-core';
import { Builder, By, Capabilities, until as isNow, type WebDriver } from 'selenium-webdriver';
import { CHROMIUM } from '../../e2e/chromium.ts';
import { type Candidate, type Opened, until, type Window } from './pages.ts';

const WAIT_MS = 15_000;
const PHONE = { width: 390, height: 844 };

/** The foot of a form lies over what is behind it: a finger moves that from under it first. */
const FROM_UNDER_THE_FOOT = { block: 'center' } as const;

const here = (...paths: (string | undefined)[]): string | undefined =>
  paths.find((path) => path !== undefined && existsSync(path));

function windowOf(page: Page): Window {
  const found = async (xpath: string) => {
    const element = await page.waitForSelector(`::-p-xpath(${xpath})`, { timeout: WAIT_MS, visible: true });
    if (!element) throw new Error(`not there: ${xpath}`);
    await element.evaluate((each, where) => each.scrollIntoView(where), FROM_UNDER_THE_FOOT);
    return element;
  };
  return {
    open: async (url) => void (await page.goto(url)),
    reload: async () => void (await page.reload()),
    click: async (xpath) => (await found(xpath)).click(),
    fill: async (xpath, text) => {
      const box = await found(xpath);
      // Three clicks take what is in it, which the first key then replaces.
      await box.click({ count: 3 });
      await box.type(text);
    },
    ask: <T>(script: string) => page.evaluate(`(() => { ${script} })()`) as Promise<T>,
    picture: async (file) => void (await page.screenshot({ path: file as `${string}.png` })),
  };
}

/** A browser for each phone, as they are. A page that another one covers draws nothing, and may wait for ever to be drawn. */
async function byPuppeteer(open: () => Promise<Browser>): Promise<Opened> {
  const browsers = [await open(), await open()] as const;
  const phone = async (browser: Browser) => {
    const page = await browser.newPage();
    await page.setViewport(PHONE);
    return windowOf(page);
  };
  return {
    version: await browsers[0].version(),
    panel: await phone(browsers[0]),
    emitter: await phone(browsers[1]),
    close: async () => {
      for (const browser of browsers) await browser.close();
    },
  };
}

function windowBy(driver: WebDriver): Window {
  const found = async (xpath: string) => {
    const element = await driver.wait(isNow.elementLocated(By.xpath(xpath)), WAIT_MS);
    await driver.wait(isNow.elementIsVisible(element), WAIT_MS);
    await driver.executeScript('arguments[0].scrollIntoView(arguments[1])', element, FROM_UNDER_THE_FOOT);
    return element;
  };
  return {
    open: (url) => driver.get(url),
    reload: () => driver.navigate().refresh(),
    click: async (xpath) => (await found(xpath)).click(),
    fill: async (xpath, text) => {
      const box = await found(xpath);
      await box.clear();
      await box.sendKeys(text);
    },
    ask: <T>(script: string) => driver.executeScript<T>(script),
    picture: async (file) => writeFile(file, Buffer.from(await driver.takeScreenshot(), 'base64')),
  };
}

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as { port: number };
      probe.close(() => resolve(port));
    });
  });

/** A driver holds one session, so that each phone has its own, and its own window. */
async function webKit(path: string): Promise<{ driver: WebDriver; end: () => Promise<void> }> {
  const port = await freePort();
  const program: ChildProcess = spawn(path, [`--port=${port}`], { stdio: 'ignore' });
  const answers = () =>
    fetch(`http://127.0.0.1:${port}/status`).then(
      () => true,
      () => undefined,
    );
  await until('the driver of WebKit', answers);
  const wanted = new Capabilities({
    browserName: 'MiniBrowser',
    'webkitgtk:browserOptions': { binary: here(...MINI_BROWSERS), args: ['--automation'] },
  });
  const driver = await new Builder().usingServer(`http://127.0.0.1:${port}`).withCapabilities(wanted).build();
  await driver
    .manage()
    .window()
    .setRect({ ...PHONE, x: 0, y: 0 });
  const end = async () => {
    await driver.quit().catch(() => undefined);
    program.kill();
  };
  return { driver, end };
}

const MINI_BROWSERS = [
  '/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser',
  '/usr/lib/aarch64-linux-gnu/webkit2gtk-4.1/MiniBrowser',
];

export const CANDIDATES: readonly Candidate[] = [
  {
    name: 'Chromium',
    by: 'puppeteer-core, DevTools protocol',
    path: CHROMIUM,
    open: (path) =>
      byPuppeteer(() => puppeteer.launch({ executablePath: path, args: ['--no-sandbox', '--disable-gpu'] })),
  },
  {
    name: 'Firefox',
    by: 'puppeteer-core, WebDriver BiDi',
    path: here(process.env.FIREFOX, '/usr/bin/firefox-esr', '/usr/bin/firefox'),
    open: (path) =>
      byPuppeteer(() => puppeteer.launch({ browser: 'firefox', executablePath: path, headless: true })),
  },
  {
    name: 'WebKitGTK (MiniBrowser)',
    by: 'selenium-webdriver, WebKitWebDriver',
    path: here(process.env.WEBKIT_DRIVER, '/usr/bin/WebKitWebDriver'),
    open: async (path) => {
      const [panel, emitter] = [await webKit(path), await webKit(path)];
      const capabilities = await panel.driver.getCapabilities();
      return {
        version: `${capabilities.getBrowserName()} ${capabilities.getBrowserVersion()}`,
        panel: windowBy(panel.driver),
        emitter: windowBy(emitter.driver),
        close: async () => {
          await panel.end();
          await emitter.end();
        },
      };
    },
  },
];

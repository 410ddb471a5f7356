import { join } from 'node:path';
import { DEMO_PAIR } from '../../../server/demo/site.ts';
import { startServer } from '../../../server/start.ts';
import { MemoryStore } from '../../../server/store/memory.ts';
import { createBeamPair } from '../../../src/simulator/pair.ts';
import { createRng } from '../../../src/simulator/rng.ts';
import { Hall } from '../../e2e/hall.ts';
import { logOf, stateOf } from '../../e2e/job-log.ts';
import { button, field, holding, link, type Opened, until, type Window } from './pages.ts';

/** What came of one step: a remark, or what went wrong. */
export interface Outcome {
  readonly step: string;
  readonly ok: boolean;
  readonly note: string;
}

const SAY_BOX = 'Type the reading, or anything you would say';
const READINGS = 3;

/** What this browser has of the things that we use and that are not everywhere. */
const HAS = `return {
  'microphone (asked for, not opened)': Boolean(navigator.mediaDevices?.getUserMedia),
  'audio worklet': Boolean(globalThis.AudioWorkletNode),
  'service worker': Boolean(navigator.serviceWorker),
  'voice: speechSynthesis': Boolean(globalThis.speechSynthesis),
  'voices of its own': (globalThis.speechSynthesis?.getVoices() ?? []).length > 0,
  'screen stays on: wakeLock': Boolean(navigator.wakeLock),
  'vibration': Boolean(navigator.vibrate),
}`;

/** As a finger does in the list that the system draws, where no driver reaches. */
const CHOOSE_COUNTS = `const counts = [...document.querySelectorAll('option')].find((one) => one.text === '8-bit counts');
  counts.selected = true;
  for (const type of ['input', 'change']) counts.parentElement.dispatchEvent(new Event(type, { bubbles: true }));`;

/** Keeps what the page gives to the voice of the browser, and gives it on. */
const LISTEN_IN = `if (globalThis.speechSynthesis) {
  const said = (globalThis.saidByPage = []);
  const speak = speechSynthesis.speak.bind(speechSynthesis);
  speechSynthesis.speak = (one) => { said.push(one.text); speak(one); };
}`;

/**
 * A short run of the main job in one browser: two phones, a simulated hall, three readings and what comes between. After a
 * step that fails the rest is not tried. `folder`: for a picture at the end.
 */
export async function runJob({ panel, emitter }: Opened, folder: string): Promise<Outcome[]> {
  const store = new MemoryStore();
  const server = await startServer({ store });
  const hall = new Hall(createBeamPair({ ...DEMO_PAIR, lagMs: 50 }), createRng(7));
  const outcomes: Outcome[] = [];
  let shown = 0;

  const step = async (name: string, work: () => Promise<string | undefined>) => {
    if (outcomes.some(({ ok }) => !ok)) return;
    try {
      outcomes.push({ step: name, ok: true, note: (await work()) ?? '' });
    } catch (error) {
      outcomes.push({ step: name, ok: false, note: (error as Error).message.split('\n')[0] ?? '' });
    }
  };
  const shows = (window: Window, text: string) =>
    until(`"${text}" on the screen`, async () =>
      (await window.ask<string>('return document.body.innerText')).includes(text) ? true : undefined,
    );
  const orderOn = (window: Window) =>
    window.ask<string | null>("return document.querySelector('.face .show')?.textContent ?? null");

  await step('opens a job', async () => {
    await panel.open(`${server.url}/`);
    await panel.click(link('At the panel'));
    await panel.fill(field('Site'), 'Quayside Hall 3');
    await panel.fill(field('Beam pair'), 'B2');
    await panel.ask(CHOOSE_COUNTS);
    await panel.click(holding('Edit the meter'));
    await panel.fill(field('Settles within'), '0.4');
    await panel.fill(field('Must stay steady for'), '1');
    await panel.click(button('Open the job'));
    await panel.click(button('Understood'));
    return undefined;
  });
  await step('a second phone joins, cautions first', async () => {
    const code = await until('the code', () =>
      panel
        .ask<string | null>("return document.querySelector('.invite-code')?.textContent ?? null")
        .then((text) => text ?? undefined),
    );
    await emitter.open(`${server.url}/`);
    await emitter.ask(LISTEN_IN);
    await emitter.click(link('At the emitter'));
    await emitter.fill(field('Join code'), code);
    await emitter.click(button('Join'));
    await emitter.click(button('Understood'));
    await emitter.click(button('Upright'));
    await shows(panel, 'Emitter here');
    await shows(emitter, 'Panel here');
    return undefined;
  });
  await step(`${READINGS} readings typed; orders shown, and done`, async () => {
    let answered = -1;
    let readings = 0;
    let turns = 0;
    await until(
      'three readings and a turn',
      async () => {
        if (readings >= READINGS && turns > 0) return true;
        const { instruction } = await stateOf(store);
        if (!instruction || instruction.seq === answered) return undefined;
        const { action } = instruction.advice;
        if (action.kind === 'hold') return undefined;
        await until(`the order "${instruction.show}"`, async () =>
          (await orderOn(emitter)) === instruction.show ? true : undefined,
        );
        shown++;
        answered = instruction.seq;
        if (action.kind === 'read') {
          const text = hall.meterShows();
          await panel.fill(field(SAY_BOX), text);
          await panel.click(button('Send'));
          await until(`the reading ${text} on the ladder`, async () => {
            const on = await emitter.ask<string>(
              "return document.querySelector('.reading-value')?.textContent ?? ''",
            );
            return on === text ? true : undefined;
          });
          readings++;
        } else {
          await emitter.click(button(hall.work(instruction)));
          turns++;
        }
        return undefined;
      },
      60_000,
    );
    return `${shown} orders shown, ${turns} done`;
  });
  await step('orders given to the voice', async () => {
    const said = await emitter.ask<string[] | null>('return globalThis.saidByPage ?? null');
    if (said === null) return 'no speechSynthesis: the screen says so, and the server can speak instead';
    if (said.length === 0) return 'none: this browser has no voice that fits';
    return `${said.length} texts`;
  });
  await step('a reload keeps the seat', async () => {
    await emitter.reload();
    await shows(emitter, 'Panel here');
    return undefined;
  });
  await step('the record opens', async () => {
    const watch = await panel.ask<string>("return JSON.parse(localStorage['ladderline.seat.panel']).watch");
    const entries = await logOf(store);
    await panel.open(`${server.url}/watch#${watch}`);
    await until('the charts', async () =>
      (await panel.ask<boolean>("return Boolean(document.querySelector('#charts-title'))"))
        ? true
        : undefined,
    );
    return `${entries.length} entries`;
  });
  const has = await panel.ask<Record<string, boolean>>(HAS).catch(() => ({}) as Record<string, boolean>);
  for (const [what, is] of Object.entries(has))
    outcomes.push({ step: what, ok: true, note: is ? 'yes' : 'no' });
  await panel.picture(join(folder, 'panel.png')).catch(() => undefined);
  await emitter.picture(join(folder, 'emitter.png')).catch(() => undefined);
  await server.close();
  return outcomes;
}

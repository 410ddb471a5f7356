import { DEMO_PAIR } from '../../server/demo/site.ts';
import { NEUTRAL_METERS } from '../../src/model/profile.ts';
import { randomPair } from '../../src/simulator/cases.ts';
import { MOVE_MS, SAY_MS } from '../../src/simulator/crew.ts';
import type { PairSpec } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { CHROMIUM, launch } from '../e2e/chromium.ts';
import { Crew, type Walk } from './newcomer/crew.ts';

/**
 * Newcomers with two real pages, 390×844, from the home page to an accepted pair, proven by the engine's own tests: counted in
 * taps and seconds at the panel and at the ladder. They follow the orders on their screens and change nothing that the form
 * offers but site, pair and meter. `-- 5`: pairs; the first is the demo's, the others are drawn from the seeds
 * 73,000,000 + 7919 n. All are walked at once, each on a server of its own. Build the client first.
 *
 * The hands take no time. "With hands" adds what `src/simulator/crew.ts` estimates for each: no source.
 */
if (!CHROMIUM) throw new Error('no Chromium was found');
const pairs = Number(process.argv[2] ?? 3);
/** On the pad for a reading. */
const FIGURE = /^[0-9.−]$/;
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, locale: 'en-GB' };

/** With one of the meters as the form offers them: a newcomer edits none. */
function pairOf(n: number): PairSpec {
  const spec = n === 0 ? DEMO_PAIR : randomPair(createRng(73_000_000 + 7919 * n));
  const meter = NEUTRAL_METERS.find(({ name }) => name === spec.meter.name);
  if (!meter) throw new Error(`no such meter: ${spec.meter.name}`);
  return { ...spec, meter, gainStepDb: 0 };
}

const browser = await launch();
async function phone() {
  const context = await browser.newContext(PHONE);
  // What runs the benchmarks marks every function with a helper that the page does not have.
  await context.addInitScript('globalThis.__name = (named) => named');
  return context.newPage();
}

function row({ panel, emitter, seconds, shortfall, ...did }: Walk) {
  const hands = (did.turns + did.gains + did.covers + 10 * did.aims) * MOVE_MS + did.readings * SAY_MS;
  return {
    'seconds to ready': seconds.ready.toFixed(0),
    'seconds in all': seconds.accepted.toFixed(0),
    'of them held': seconds.held.toFixed(0),
    'with hands': (seconds.accepted + hands / 1000).toFixed(0),
    'panel taps': panel.tapped.length,
    letters: panel.typed,
    'ladder taps': emitter.tapped.length,
    'its letters': emitter.typed,
    turns: did.turns,
    readings: did.readings,
    questions: did.questions,
    'short, dB': shortfall.toFixed(2),
    searched: panel.searched.length + emitter.searched.length,
  };
}

const walks = await Promise.allSettled(
  Array.from({ length: pairs }, async (_, n) =>
    new Crew(await phone(), await phone(), pairOf(n), createRng(n + 1)).walk(),
  ),
);
console.table(
  walks.map((walk) =>
    walk.status === 'fulfilled' ? row(walk.value) : { failed: String(walk.reason).split('\n')[0] },
  ),
);
for (const [n, walk] of walks.entries())
  if (walk.status === 'fulfilled')
    for (const phone of ['panel', 'emitter'] as const) {
      const { tapped, searched } = walk.value[phone];
      const keys = counted(tapped.map((label) => (FIGURE.test(label) ? 'a figure' : label)));
      console.log(`pair ${n}, ${phone}: ${[...keys].map(([what, many]) => `${many} ${what}`).join('; ')}`);
      for (const [what, many] of counted(searched))
        console.log(`pair ${n}, ${phone}: out of sight ${many} times: ${what}`);
    }
await browser.close();
process.exit(walks.every(({ status }) => status === 'fulfilled') ? 0 : 1);

function counted(all: readonly string[]): Map<string, number> {
  const many = new Map<string, number>();
  for (const one of all) many.set(one, (many.get(one) ?? 0) + 1);
  return many;
}

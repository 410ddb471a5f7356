import type { Page } from 'playwright-core';
import { layDown } from '../../../server/demo/site-fixture.ts';
import { digest, newToken } from '../../../server/guard/secrets.ts';
import { SpeechUnavailable, type Transcriber } from '../../../server/speech/transcriber.ts';
import { type RunningServer, startServer } from '../../../server/start.ts';
import { MemoryStore } from '../../../server/store/memory.ts';
import { emptyHead, headAfter, seal } from '../../../src/log/chain.ts';
import type { Action, Advice } from '../../../src/model/advice.ts';
import type { AloneWay } from '../../../src/model/alone.ts';
import type { Entry } from '../../../src/model/entry.ts';
import type { Seat } from '../../../src/model/facts.ts';
import type { Mounting } from '../../../src/model/mounting.ts';
import { lookText } from '../../../src/phrases/looking.ts';
import { AT_SEAT, CREW_ABOUT, START_AT, TROUBLES } from '../../../src/phrases/practice.ts';
import { END_PRACTICE } from '../../../src/phrases/practice-band.ts';
import { STOP_KEEPING } from '../../../src/phrases/sound.ts';
import { Phone, post } from '../../server/phone.ts';
import { demo, unsigned, visitTo } from '../../server/played-site.ts';
import { press as pressNamed } from '../hall.ts';

/** One screen in one state. */
export interface ScreenState {
  name: string;
  path: string;
  /** What this device keeps before the page opens. */
  kept?: Readonly<Record<string, unknown>>;
  /** Shown when the page is ready. */
  ready: string;
  /** What is pressed then. */
  go?(page: Page): Promise<void>;
  /** A sheet of paper: on the smallest screen, with text of double size, it may be moved sideways. */
  paper?: boolean;
  /** The order and its main answer must be in sight. */
  order?: boolean;
}

export interface Screens {
  server: RunningServer;
  states: readonly ScreenState[];
  close(): Promise<void>;
}

/** A time, and not another number: ms since 1970, in this century. */
const isTime = (value: unknown): value is number => typeof value === 'number' && value > 1e12;

function later<T>(value: T, by: number): T {
  if (isTime(value)) return (value + by) as T;
  if (Array.isArray(value)) return value.map((one) => later(one, by)) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, later(one, by)])) as T;
}

/** A slow machine takes minutes to look at a screen in every size: no order goes stale meanwhile. */
const unhurried = (fact: Entry['fact']): Entry['fact'] =>
  fact.type === 'instruction' ? { ...fact, expiresAt: fact.expiresAt + 86_400_000 } : fact;

/** The beginning of a played visit, as if its last entry had been written just now. */
function untilNow(job: string, entries: readonly Entry[]): Entry[] {
  const by = Date.now() - (entries.at(-1)?.at ?? 0);
  let head = emptyHead(job);
  return entries.map(({ at, actor, fact }) => {
    const entry = seal(head, { actor, fact: unhurried(later(fact, by)) }, at + by);
    head = headAfter(entry);
    return entry;
  });
}

/** Somebody has said how the unit hangs: otherwise the phone at the emitter asks that first. */
const hanging = (entries: readonly Entry[], mounting: Mounting | 'unsaid'): Entry[] =>
  entries
    .slice(-1)
    .flatMap((last) =>
      mounting === 'unsaid'
        ? []
        : [{ ...last, actor: 'emitter' as const, fact: { type: 'mounted' as const, mounting } }],
    );

type OfKind = { [K in Action['kind']]?: (action: Extract<Action, { kind: K }>) => boolean };

/** What the two seats are asked, by the kind of step; where it matters, which of that kind. */
const STEPS: Readonly<Record<string, OfKind>> = {
  checklist: { 'confirm-item': () => true },
  told: { 'confirm-item': ({ item }) => item === 'people-told' },
  aim: { 're-aim': () => true },
  turn: { turn: ({ eighths }) => Math.abs(eighths) > 8 },
  read: { read: () => true },
  hold: { hold: () => true },
  gain: { gain: ({ change }) => change === 'lower' },
  cover: { cover: ({ how }) => how === 'half' },
  block: { block: () => true },
  watch: { 'watch-panel': () => true },
  check: { check: () => true },
  accept: { 'offer-accept': () => true },
  sign: { 'offer-sign': () => true },
  finished: { finished: () => true },
};

function stepOf(of: OfKind): readonly Entry[] {
  for (const { entries } of demo.visits) {
    const end = entries.findIndex(({ fact }) => {
      if (fact.type !== 'instruction') return false;
      const { action } = fact.advice;
      return (of[action.kind] as ((a: Action) => boolean) | undefined)?.(action) ?? false;
    });
    if (end >= 0) return entries.slice(0, end + 1);
  }
  throw new Error(`the played site has no such step: ${Object.keys(of)}`);
}

/** The same job, of one person alone. */
const aloneOn = (entries: readonly Entry[], way: AloneWay): Entry[] =>
  entries.map((entry) => {
    const { fact } = entry;
    return fact.type === 'opened'
      ? { ...entry, fact: { ...fact, setup: { ...fact.setup, alone: way } } }
      : entry;
  });

/** The same, of one who sees an indicator from the ladder: the last order is to look, against the look before. */
const lookingOn = (entries: readonly Entry[]): Entry[] =>
  aloneOn(entries, 'looking').map((entry, i, all) => {
    const { fact } = entry;
    if (fact.type !== 'instruction' || i < all.length - 1) return entry;
    const advice: Advice = {
      ...fact.advice,
      to: 'emitter',
      action: { kind: 'read', as: 'trend' },
      rule: 'climb',
      because: [i - 1],
    };
    return { ...entry, fact: { ...fact, advice, ...lookText(advice, 'looking') } };
  });

/** The same, with the sound of what was said kept. It is gone again, as the record finds when somebody wants to hear it. */
const withSound = (entries: readonly Entry[]): Entry[] =>
  entries.map((entry) => {
    const { fact, at } = entry;
    const sound = { hash: '0'.repeat(64), bytes: 20_000, until: at + 30 * 86_400_000 };
    return fact.type === 'said' ? { ...entry, fact: { ...fact, sound } } : entry;
  });

const HEARS_NOTHING: Transcriber = {
  name: 'stand-in',
  transcribe: () => Promise.reject(new SpeechUnavailable('Nobody speaks to these screens.')),
  close: async () => undefined,
};

/** Every screen of the app, on a server of its own. `said`: a text of ours in the language of the pages. */
export async function screens(said: (english: string) => string = (english) => english): Promise<Screens> {
  const press = (page: Page, name: string) => pressNamed(page, said(name));
  const store = new MemoryStore();
  const { desk, watch } = await layDown(store, unsigned('N1'));
  // A question must still be there when the last size is looked at. Speech is ready, so that its keys are there.
  const server = await startServer({ store, transcriber: HEARS_NOTHING, limits: { askLastsMs: 3600_000 } });
  let count = 0;

  async function seat(at: Seat, entries: readonly Entry[], mounting: Mounting | 'unsaid' = 'upright') {
    const job = `screens-${++count}`;
    await store.append(job, untilNow(job, [...entries, ...hanging(entries, mounting)]));
    const token = newToken();
    const watcher = newToken();
    const issue = [
      { token: digest(token), role: at },
      { token: digest(watcher), role: 'watcher' as const },
    ];
    await store.append(job, [], { issue });
    const kept = {
      [`seat.${at}`]: { seat: at, job, token, watch: watcher, title: 'Quayside Hall, north aisle 1' },
      [`cautions.${job}.${at}`]: true,
    };
    return { job, token, kept };
  }

  /** Into a practice job, until there is something to do. Without trouble, so that it is the same each time. */
  const practising = (start: string) => async (page: Page) => {
    await press(page, TROUBLES.vibration.name);
    await press(page, TROUBLES.vibration.name);
    await press(page, start);
    await press(page, 'Understood');
    await page.locator(':is(.band-read, .drawn-screw)').first().waitFor({ timeout: 15_000 });
  };
  const unknown = async (page: Page) => {
    await page.evaluate(() => {
      history.pushState(null, '', '/elsewhere');
      dispatchEvent(new PopStateEvent('popstate'));
    });
    await page.getByText(said('There is no such page')).waitFor();
  };

  const states: ScreenState[] = [];
  for (const at of ['panel', 'emitter'] as const) {
    for (const [step, of] of Object.entries(STEPS)) {
      const { kept } = await seat(at, stepOf(of));
      states.push({
        name: `${at}-${step}`,
        path: `/${at}`,
        kept,
        ready: '.state.good',
        order: at === 'emitter',
      });
    }
    const turning = stepOf(STEPS.turn as OfKind);
    const asked = await seat(at, stepOf(STEPS.read as OfKind));
    const phone = await Phone.at(server.url, asked.token);
    const heard = { t: 'say', via: 'voice', text: 'five zero', confidence: 0.5 } as const;
    phone.send({ ...heard, alternatives: [{ text: 'five zero', confidence: 0.5 }] });
    await phone.next('ack');
    phone.socket.close();
    const more: [string, string, ((page: Page) => Promise<void>)?][] = [
      ['menu', '.state.good', (page) => press(page, 'Menu')],
      [
        'stopped',
        '.state.good',
        async (page) => {
          await press(page, 'Menu');
          await press(page, 'Stop the job');
          await page.getByRole('heading', { name: said('Stopped') }).waitFor();
        },
      ],
    ];
    for (const [name, ready, go] of more) {
      const { kept } = await seat(at, turning);
      states.push({ name: `${at}-${name}`, path: `/${at}`, kept, ready, ...(go && { go }) });
    }
    states.push({ name: `${at}-question`, path: `/${at}`, kept: asked.kept, ready: '.state.good' });
    const { kept, job } = await seat(at, turning);
    const unread = { ...kept, [`cautions.${job}.${at}`]: false };
    states.push({ name: `${at}-cautions`, path: `/${at}`, kept: unread, ready: '.cautions-page' });
    const lost = { [`seat.${at}`]: { seat: at, job: 'screens-none', token: newToken() } };
    states.push({ name: `${at}-ended`, path: `/${at}`, kept: lost, ready: 'h1' });
  }
  const opened = stepOf(STEPS.checklist as OfKind).filter(({ fact }) => fact.type === 'opened');
  const alone = await seat('panel', opened);
  states.push({ name: 'panel-invite', path: '/panel', kept: alone.kept, ready: '.square svg' });
  states.push({
    name: 'panel-asked',
    path: '/panel',
    kept: (await seat('panel', opened)).kept,
    ready: '.square svg',
    go: async (page) => {
      const word = (await page.locator('.invite-word strong').textContent()) ?? '';
      const person = { name: 'B. Example', firm: 'Larkmoor Fire Systems' };
      await post(server.url, '/api/ask', { word, device: 'Android phone', person });
      await page.locator('.ask-card').waitFor();
    },
  });
  const correcting = await seat('panel', stepOf(STEPS.gain as OfKind));
  states.push({
    name: 'panel-correct',
    path: '/panel',
    kept: correcting.kept,
    ready: '.state.good',
    go: (page) => press(page, 'Correct'),
  });
  const charted = await seat('panel', stepOf(STEPS.accept as OfKind));
  states.push({
    name: 'panel-chart',
    path: '/panel',
    kept: charted.kept,
    ready: '.state.good',
    go: async (page) => {
      await page.locator('.chart-button').click();
      await page.locator('.sheet .chart svg').first().waitFor();
    },
  });
  for (const theme of ['sun', 'night']) {
    const { kept } = await seat('emitter', stepOf(STEPS.turn as OfKind));
    states.push({
      name: `emitter-${theme}`,
      path: '/emitter',
      kept: { ...kept, theme },
      ready: '.state.good',
    });
  }
  const keyed = await seat('panel', stepOf(STEPS.turn as OfKind));
  states.push({
    name: 'panel-keys',
    path: '/panel',
    kept: keyed.kept,
    ready: '.state.good',
    go: async (page) => {
      await press(page, 'Menu');
      await press(page, 'Who has a key');
      await page.locator('.key').first().waitFor();
    },
  });
  const sounding = await seat('panel', stepOf(STEPS.turn as OfKind));
  states.push({
    name: 'panel-sound-kept',
    path: '/panel',
    kept: sounding.kept,
    ready: '.state.good',
    go: async (page) => {
      await press(page, 'Menu');
      const kept = page.locator('.keep-sound .button');
      if ((await kept.textContent()) !== said(STOP_KEEPING)) await kept.click();
      await page.getByRole('button', { name: said(STOP_KEEPING) }).waitFor();
    },
  });
  for (const step of ['turn', 'read', 'hold'] as const) {
    const { kept } = await seat('panel', aloneOn(stepOf(STEPS[step] as OfKind), 'walking'));
    states.push({ name: `alone-${step}`, path: '/panel', kept, ready: '.state.good' });
  }
  const looking = await seat('panel', lookingOn(stepOf(STEPS.read as OfKind)));
  states.push({ name: 'alone-look', path: '/panel', kept: looking.kept, ready: '.state.good', order: true });
  const early = await seat('panel', stepOf(STEPS.turn as OfKind));
  states.push({
    name: 'panel-not-proven',
    path: '/panel',
    kept: early.kept,
    ready: '.state.good',
    go: async (page) => {
      await press(page, 'Menu');
      await press(page, 'Accept the alignment');
      await page.locator('.sheet summary').click();
    },
  });
  const cannot = await seat('emitter', stepOf(STEPS.turn as OfKind));
  states.push({
    name: 'emitter-cannot',
    path: '/emitter',
    kept: cannot.kept,
    ready: '.state.good',
    go: (page) => press(page, "Can't"),
  });

  const turned = stepOf(STEPS.turn as OfKind);
  const onItsSide = await seat('emitter', turned, 'top-left');
  const unasked = await seat('emitter', turned, 'unsaid');
  states.push(
    {
      name: 'emitter-on-its-side',
      path: '/emitter',
      kept: onItsSide.kept,
      ready: '.beam-way',
      order: true,
    },
    { name: 'emitter-mounting', path: '/emitter', kept: unasked.kept, ready: '.mountings' },
  );

  const sites = [{ token: desk, site: 'Quayside terminal, halls 1 to 4', watch }];
  const jobs = [
    { job: 'past', title: 'Quayside terminal, N4', stand: 'signed', seenAt: Date.UTC(2026, 4, 4), watch },
    { job: 'other', title: 'Larkmoor store, B2', stand: 'open', seenAt: Date.UTC(2026, 3, 1) },
  ];
  const known = { ...cannot.kept, sites, jobs };
  const finished = demo.visits.find(({ entries }) => entries.some(({ fact }) => fact.type === 'signed'));
  const [first] = demo.visits;
  const job = visitTo('N1').job;
  const pair = visitTo('N1').pair;
  states.push(
    { name: 'home', path: '/', ready: '.way' },
    { name: 'home-known', path: '/', kept: known, ready: '.resume' },
    {
      name: 'home-forget',
      path: '/',
      kept: known,
      ready: '.known-job',
      go: (page) => page.getByRole('button', { name: said('Forget: Quayside terminal, N4') }).click(),
    },
    { name: 'join', path: '/join', ready: '.join' },
    { name: 'join-ask', path: '/ask#KILO-417', ready: '.join' },
    { name: 'start-trust', path: '/trust', ready: '.trust-state' },
    { name: 'start', path: '/panel#new', ready: 'form' },
    { name: 'start-alone', path: '/alone', ready: '.alone-way' },
    {
      name: 'profiles',
      path: '/panel#new',
      ready: 'form',
      go: async (page) => {
        const closed = page.locator('details:not([open]) > summary:visible');
        while ((await closed.count()) > 0) await closed.first().click();
      },
    },
    { name: 'practice', path: '/practice', ready: '.troubles' },
    { name: 'practice-first-panel', path: '/practice', ready: '.troubles', go: practising(AT_SEAT.panel) },
    {
      name: 'practice-first-emitter',
      path: '/practice',
      ready: '.troubles',
      go: practising(AT_SEAT.emitter),
    },
    { name: 'practice-panel', path: '/practice', ready: '.troubles', go: practising(START_AT.panel) },
    {
      name: 'practice-emitter',
      path: '/practice',
      ready: '.troubles',
      go: practising(START_AT.emitter),
      order: true,
    },
    {
      name: 'practice-end',
      path: '/practice',
      ready: '.troubles',
      go: async (page) => {
        await practising(START_AT.panel)(page);
        await press(page, 'Menu');
        await press(page, END_PRACTICE);
        await page.getByText(said(CREW_ABOUT)).waitFor();
      },
    },
    { name: 'board', path: `/site#${desk}`, ready: '.pair-row' },
    { name: 'board-watch', path: `/site#${watch}`, ready: '.pair-row' },
    { name: 'new-site', path: '/site/new', ready: 'form' },
    { name: 'plan-new', path: `/site/plan#${desk}`, ready: 'form' },
    { name: 'plan', path: `/site/plan#${desk}/${pair}`, ready: 'form' },
    { name: 'import', path: `/site/import#${desk}`, ready: 'main input, main textarea' },
    { name: 'visit-unsigned', path: `/site/pair#${desk}/${job}`, ready: '#charts-title' },
    {
      name: 'visit-signed',
      path: `/site/pair#${desk}/${finished?.job ?? first?.job}`,
      ready: '#charts-title',
    },
    { name: 'visit-findings', path: `/site/pair#${desk}/${visitTo('S3').job}`, ready: '.finding' },
    { name: 'report', path: `/report#${desk}/${job}`, ready: 'main h2', paper: true },
    { name: 'page-unknown', path: '/', ready: '.way', go: unknown },
    { name: 'page-unknown-asked', path: '/elsewhere', ready: 'h1' },
    { name: 'page-cut-short', path: '/site/pair', ready: 'h1' },
    { name: 'emitter-no-seat', path: '/emitter', ready: 'h1' },
  );
  const watched = Object.values(cannot.kept).find((one) => typeof one === 'object') as { watch: string };
  states.push({ name: 'record', path: `/watch#${watched.watch}`, ready: '#charts-title' });
  const listened = await seat('panel', withSound(stepOf(STEPS.gain as OfKind)));
  const own = Object.values(listened.kept).find((one) => typeof one === 'object') as { watch: string };
  states.push({ name: 'record-sound', path: `/watch#${own.watch}`, ready: '#charts-title' });
  return { server, states, close: () => server.close() };
}

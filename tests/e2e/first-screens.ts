import { digest, newToken } from '../../server/guard/secrets.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { accepted } from '../record/fixture.ts';
import { join, openJob } from '../server/phone.ts';

/** A page as somebody meets it first, on a phone that has nothing of it yet. */
export interface FirstScreen {
  name: string;
  /** With its key. */
  path: string;
  /** What this device keeps before the page opens. */
  kept: Readonly<Record<string, unknown>>;
  /** CSS: it is there when the screen is of use. */
  useful: string;
}

/** A server with a job that both phones may open, and a record of another one. */
export async function firstScreens(): Promise<{ server: RunningServer; screens: readonly FirstScreen[] }> {
  const store = new MemoryStore();
  const server = await startServer({ store });
  const { job, token, invite } = await openJob(server.url);
  const emitter = await join(server.url, invite.code);
  const seats = {
    'seat.panel': { seat: 'panel', job, token },
    'seat.emitter': { seat: 'emitter', job, token: emitter.token },
  };
  const agreed = { ...seats, [`cautions.${job}.panel`]: true, [`cautions.${job}.emitter`]: true };
  const { entries, head } = accepted('first-screens');
  const watch = newToken();
  await store.append(head.job, entries, { issue: [{ token: digest(watch), role: 'watcher' }] });
  const screens: FirstScreen[] = [
    { name: 'home', path: '/', kept: {}, useful: 'h1' },
    { name: 'join', path: '/join', kept: {}, useful: 'input' },
    { name: 'ask', path: '/ask', kept: {}, useful: 'input' },
    // The cautions: they stand before everything else, and the button is alive once the job is known.
    { name: 'panel', path: '/panel', kept: seats, useful: '.cautions-page button.huge:not([disabled])' },
    { name: 'emitter', path: '/emitter', kept: seats, useful: '.cautions-page button.huge:not([disabled])' },
    { name: 'panel, cautions read', path: '/panel', kept: agreed, useful: 'main.panel' },
    { name: 'emitter, cautions read', path: '/emitter', kept: agreed, useful: '.mountings' },
    { name: 'watch', path: `/watch#${watch}`, kept: {}, useful: '.verdict' },
    { name: 'record', path: `/report#${watch}`, kept: {}, useful: 'article' },
  ];
  return { server, screens };
}

import { useEffect, useState } from 'preact/hooks';
import type { Request } from './asked.ts';

/** Whether this browser keeps the pages for times without a link. */
export interface KeptPages {
  /** `no`: the page is not secure, or the browser refused. */
  kept: 'not-yet' | 'yes' | 'no';
  /** A newer version is here and waits. */
  newer: boolean;
}

let state: KeptPages = { kept: 'not-yet', newer: false };
let registration: ServiceWorkerRegistration | undefined;
const listeners = new Set<() => void>();

function put(patch: Partial<KeptPages>): void {
  state = { ...state, ...patch };
  for (const listener of listeners) listener();
}

const WORKER = '/service-worker.js';

/** Once, when the app starts. */
export async function keepPages(): Promise<void> {
  const { serviceWorker } = navigator;
  if (!serviceWorker) return put({ kept: 'no' });
  try {
    registration = await serviceWorker.register(WORKER);
  } catch {
    return put({ kept: 'no' });
  }
  const look = () => {
    // Without an active one, what waits is the first version, and it waits for nobody.
    put({ newer: Boolean(registration?.waiting && registration.active) });
  };
  registration.addEventListener('updatefound', () => {
    registration?.installing?.addEventListener('statechange', look);
  });
  look();
  await serviceWorker.ready;
  put({ kept: 'yes' });
}

/** Held by every page that is at a seat: nobody's page may change while a job runs on this phone. */
const AT_A_SEAT = 'ladderline.at-a-seat';

/** Until the returned function is called. */
export function holdVersion(): () => void {
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  void navigator.locks?.request(AT_A_SEAT, { mode: 'shared' }, () => held);
  return () => release();
}

/** Changes to the newer version, if one waits and no page of this phone is at a seat. */
export async function takeNewer(): Promise<void> {
  if (!registration?.waiting || !registration.active || !navigator.locks) return;
  await navigator.locks.request(AT_A_SEAT, { ifAvailable: true }, async (nobody) => {
    if (nobody) await takeOver();
  });
}

/** Changes to the newest version at once: the server no longer understands this one. */
export async function loadNewest(): Promise<void> {
  await registration?.update().catch(() => undefined);
  if (registration?.waiting) await takeOver();
  else location.reload();
}

/** Chromium's worker, asked while it still fetched for a page, was seen never to give way before the next load. */
const GIVES_WAY_MS = 10_000;

function takeOver(): Promise<void> {
  return new Promise((resolve) => {
    const load = () => {
      resolve();
      location.reload();
    };
    navigator.serviceWorker.addEventListener('controllerchange', load);
    setTimeout(load, GIVES_WAY_MS);
    registration?.waiting?.postMessage({ do: 'take-over' } satisfies Request);
  });
}

export function useKeptPages(): KeptPages {
  const [shown, setShown] = useState(state);
  useEffect(() => {
    const look = () => setShown(state);
    listeners.add(look);
    look();
    return () => void listeners.delete(look);
  }, []);
  return shown;
}

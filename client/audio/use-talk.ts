import { useEffect, useRef, useState } from 'preact/hooks';
import type { Seat } from '../../src/model/facts.ts';
import { TALK_NOT_LOADED } from '../../src/phrases/talk-ahead.ts';
import { browserStorage } from '../browser/storage.ts';
import type { Connection } from '../link/connection.ts';
import { IDLE } from './talk.ts';
import type { TalkRunner } from './talk-runner.ts';
import type { Shown, TalkView, TalkWorld } from './talk-view.ts';

/** Before anything was asked for. */
const SILENT: Shown = {
  state: IDLE,
  db: -100,
  clipping: false,
  failure: undefined,
  handsFree: 'off',
  tooLoud: false,
  onDevice: 'off',
  voice: 'unknown',
};

const ON_DEVICE = 'own-ears';

const TICK_MS = 100;

/**
 * The talk button of one seat. `keepOpenMs`: how long the microphone stays open after an utterance, so that
 * the start of the next one is not cut. 0 on a phone where the loudspeaker is more important.
 */
export function useTalk(connection: Connection, seat: Seat, world: TalkWorld, keepOpenMs: number): TalkView {
  const [shown, setShown] = useState(SILENT);
  const ref = useRef<FetchedRunner>(undefined);
  ref.current ??= new FetchedRunner(connection, keepOpenMs, (patch) =>
    setShown((old) => ({ ...old, ...patch })),
  );
  const runner = ref.current;
  runner.world = world;

  const { hearing, complaints, learnt } = connection.link;
  useEffect(() => {
    if (learnt) runner.here?.learnt(learnt);
  }, [learnt]);
  useEffect(() => {
    const heard = hearing[seat];
    if (heard && (heard.stage === 'done' || heard.stage === 'failed'))
      runner.here?.feed({ on: 'answered', id: heard.id });
    for (const { id } of complaints) if (id) runner.here?.feed({ on: 'answered', id });
  }, [hearing, complaints]);
  useEffect(() => {
    if (browserStorage.read(ON_DEVICE) === true) runner.do((it) => it.setOnDevice(true));
    const timer = setInterval(() => runner.here?.feed({ on: 'tick' }), TICK_MS);
    const hidden = () => {
      if (document.visibilityState === 'hidden') runner.here?.giveUp();
      else runner.here?.comeBack();
    };
    document.addEventListener('visibilitychange', hidden);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', hidden);
      runner.leave();
    };
  }, []);

  return {
    ...shown,
    ahead: () => void runner.fetch(),
    feed(event) {
      const at = Date.now();
      runner.do((it) => it.feed(event, at));
    },
    setHandsFree: (on) => runner.do((it) => it.setHandsFree(on)),
    setOnDevice(on) {
      browserStorage.write(ON_DEVICE, on);
      runner.do((it) => it.setOnDevice(on));
    },
    read: () => runner.do((it) => it.read()),
    forgetVoice: () => runner.here?.forgetVoice(),
  };
}

/** The runner, whose code is fetched when something is first asked of it. What is asked meanwhile waits, in its order. */
class FetchedRunner {
  here: TalkRunner | undefined;
  #world: TalkWorld = { re: undefined, speaking: false, heard() {} };
  #asked: ((runner: TalkRunner) => void)[] = [];
  #fetching = false;
  #left = false;

  constructor(
    private readonly connection: Connection,
    private readonly keepOpenMs: number,
    private readonly show: (patch: Partial<Shown>) => void,
  ) {}

  set world(world: TalkWorld) {
    this.#world = world;
    if (this.here) this.here.world = world;
  }

  do(ask: (runner: TalkRunner) => void): void {
    if (this.here) {
      ask(this.here);
      return;
    }
    this.#asked.push(ask);
    void this.fetch();
  }

  async fetch(): Promise<void> {
    if (this.here || this.#fetching) return;
    this.#fetching = true;
    try {
      const { TalkRunner } = await import('./talk-runner.ts');
      if (!this.#left) this.#begin(new TalkRunner(this.connection, this.keepOpenMs, this.show, this.#world));
    } catch {
      // It is fetched again when it is next asked for something, and only what was asked for is told of.
      if (this.#asked.length > 0) this.show({ ...SILENT, failure: TALK_NOT_LOADED });
      this.#asked = [];
    }
    this.#fetching = false;
  }

  #begin(runner: TalkRunner): void {
    this.here = runner;
    for (const ask of this.#asked.splice(0)) ask(runner);
    if (document.visibilityState === 'hidden') runner.giveUp();
  }

  leave(): void {
    this.#left = true;
    this.here?.giveUp();
  }
}

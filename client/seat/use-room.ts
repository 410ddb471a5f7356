import { nanoid } from 'nanoid';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Seq } from '../../src/model/ids.ts';
import type { Heard } from '../../src/speech/heard.ts';
import type { JobState } from '../../src/visit/state.ts';
import type { TalkView } from '../audio/talk-view.ts';
import { useTalk } from '../audio/use-talk.ts';
import { browserStorage, memoryStorage } from '../browser/storage.ts';
import { typedIn } from '../language/languages.ts';
import type { Socket } from '../link/connection.ts';
import { type Letter, type Link, serverNow } from '../link/link.ts';
import { useConnection } from '../link/use-connection.ts';
import { type JobStand, rememberJob } from '../saved/known-jobs.ts';
import { type SavedSeat, saveSeat } from '../saved/saved-seats.ts';
import { type SpeakerView, useSpeaker } from '../speak/use-speaker.ts';
import { type KeptJob, useKeeping } from './kept-job.ts';
import { useNow } from './use-now.ts';
import { useReceipts } from './use-receipts.ts';
import { useWakeLock } from './use-wake-lock.ts';
import { JobFold, type OrderOnScreen, onScreen, order } from './view.ts';

/** A seat whose room is in this page, for practice on one phone. Nothing of it is kept. */
export interface InPage {
  open(): Socket;
  /** Begins the same again, or goes back to the choice. */
  again(): void;
  leave(): void;
}

/** Everything a seat's screen shows and can do. */
export interface Room {
  saved: SavedSeat;
  link: Link;
  job: JobState;
  /** Server clock, ms. */
  now: number;
  order: OrderOnScreen;
  /** When this phone last heard from the server, by its own clock, ms. Undefined: never, for this seat. */
  lastLinked: number | undefined;
  talk: TalkView;
  speaker: SpeakerView;
  /** The phone refuses to keep the screen on. */
  screenSleeps: boolean;
  /** Says words about the instruction on the screen. */
  say(text: string, via: 'typed' | 'button'): void;
  post(letter: Unsigned): void;
  /** Since when (server clock, ms) these words, about what is on the screen now, wait to be sent. */
  waiting(text: string): number | undefined;
  dismiss(complaint: Link['complaints'][number]): void;
  inPage: InPage | undefined;
  /** In practice: ends it here, and shows how it went. */
  endPractice: (() => void) | undefined;
}

/** A letter before it has its id. */
export type Unsigned = Letter extends infer L ? (L extends Letter ? Omit<L, 'id'> : never) : never;

/** A press of a button, and the instruction on the screen at that moment. */
interface Press {
  at: number;
  re: Seq | undefined;
}

/** The second tap of a double tap with a glove comes within this time. */
export const DOUBLE_TAP_MS = 350;

/** The second tap falls on the next instruction, but was meant for the one before. */
const isSecondTap = (last: Press | undefined, press: Press): boolean =>
  last !== undefined && last.re !== press.re && press.at - last.at < DOUBLE_TAP_MS;

/** Only a signature that nothing has changed since counts. */
const standOf = ({ signed, changedBy, accepted }: JobState): JobStand => {
  if (signed && changedBy === undefined) return 'signed';
  return accepted ? 'accepted' : 'open';
};

const REDRAW_MS = 250;

const NOTHING_KEPT = memoryStorage();

/** The way to the room of a job that this phone keeps alone. */
export type OpenHere = (job: string) => () => Socket;

/** `kept`: the job as this phone last saw it. Without `inPage` and `openHere` its room is at the server. */
export function useRoom(
  saved: SavedSeat,
  kept: KeptJob,
  keepMicrophoneMs: number,
  inPage?: InPage,
  openHere?: OpenHere,
): Omit<Room, 'endPractice'> {
  const { token, job: jobId, seat } = saved;
  const drawer = `outbox.${jobId}.${seat}`;
  const open = useMemo(() => inPage?.open ?? openHere?.(jobId), []);
  const connection = useConnection(token, {
    storage: inPage ? NOTHING_KEPT : browserStorage,
    drawer,
    known: kept.entries,
    open,
  });
  const { link } = connection;
  const pressed = useRef<Press>(undefined);
  const folding = useRef(new JobFold());
  const job = folding.current.upTo(link.entries);
  const now = useNow(REDRAW_MS);
  const shown = order(link, job, now);
  const re = onScreen(shown);
  const speaking = useRef(false);
  const talk = useTalk(connection, seat, { re, speaking: speaking.current, heard }, keepMicrophoneMs);
  const { phase } = talk.state;
  const microphoneOpen = phase === 'opening' || phase === 'talking' || talk.handsFree === 'hearing';
  const current = shown.kind === 'current' ? shown.instruction : undefined;
  const speaker = useSpeaker(link, current, seat, microphoneOpen, {
    mounting: job.mounting,
    alone: job.setup?.alone,
  });
  useReceipts(connection, seat === 'emitter' ? current?.seq : undefined, speaker.said);
  speaking.current = speaker.speaking;
  const screenSleeps = useWakeLock();
  const lastLinked = useKeeping(saved, kept, link, !inPage);

  const title = job.setup && `${job.setup.site}, ${job.setup.pair}`;
  useEffect(() => {
    if (title && title !== saved.title && !inPage) saveSeat(browserStorage, { ...saved, title });
    if (title) document.title = `${title} · Ladderline`;
  }, [title]);

  const stand = standOf(job);
  const remembered = !inPage && !job.setup?.practice;
  useEffect(() => {
    if (!title || !remembered) return;
    const { watch } = saved;
    rememberJob(browserStorage, { job: jobId, title, stand, seenAt: Date.now(), ...(watch && { watch }) });
  }, [title, stand, saved.watch]);

  const post = (letter: Unsigned) =>
    connection.feed({ on: 'post', letter: { ...letter, id: nanoid() } as Letter });
  function heard({ text, confidence, alternatives }: Heard, of: Seq | undefined): void {
    post({ t: 'say', via: 'voice', text, confidence, alternatives, ...(of !== undefined && { re: of }) });
  }
  const waiting = (text: string) => {
    const same = link.outbox.find(({ letter: l }) => l.t === 'say' && l.text === text && l.re === re);
    return same && serverNow(link, same.since);
  };
  return {
    saved,
    link,
    job,
    now: serverNow(link, now),
    order: shown,
    lastLinked,
    talk,
    speaker,
    screenSleeps,
    say(text, via) {
      if (via === 'button') {
        const press = { at: Date.now(), re };
        // While the first press still waits, another press of the same button means nothing new.
        if (waiting(text) !== undefined || isSecondTap(pressed.current, press)) return;
        pressed.current = press;
      }
      const language = via === 'typed' ? typedIn() : undefined;
      post({ t: 'say', via, text, ...(language && { language }), ...(re !== undefined && { re }) });
    },
    waiting,
    post,
    dismiss: (complaint) => connection.feed({ on: 'dismiss', complaint }),
    inPage,
  };
}

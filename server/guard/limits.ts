import {
  DEAD_AFTER_MS,
  MAX_FRAME_BYTES,
  MAX_TALK_MS,
  PING_EVERY_MS,
  SAMPLE_RATE,
} from '../../src/protocol/socket.ts';

const BYTES_PER_SAMPLE = 2;

/** How many of something at once, and how many come back each second. */
export interface Allowance {
  burst: number;
  perSecond: number;
}

/** Every bound of the server in one place; tests may narrow them. */
export const LIMITS = {
  pingEveryMs: PING_EVERY_MS,
  deadAfterMs: DEAD_AFTER_MS,
  /** A connection says hello within this. */
  helloWithinMs: 5_000,
  maxFrameBytes: MAX_FRAME_BYTES,
  maxConnections: 1_000,
  /** What may wait to be sent to one phone; beyond it the connection is cut and the phone resumes. */
  maxBufferedBytes: 1024 * 1024,
  /** Entries sent in one frame of history. */
  historyBatch: 100,
  /** Text frames of one connection. An outbox of a long outage goes out at the steady rate. */
  messages: { burst: 60, perSecond: 20 } as Allowance,
  /** Frames that are no message before the connection is cut. */
  maxBadFrames: 20,
  maxTalkBytes: (MAX_TALK_MS / 1000) * SAMPLE_RATE * BYTES_PER_SAMPLE,
  /** Sound of one connection, bytes: twice what a microphone gives, for sound that had to wait. */
  sound: { burst: 1024 * 1024, perSecond: 2 * SAMPLE_RATE * BYTES_PER_SAMPLE } as Allowance,
  transcribeWithinMs: 10_000,
  /** After speech has failed, it is tried again this often on a moment of silence. */
  speechRetryMs: 5_000,
  codeLastsMs: 15 * 60_000,
  /**
   * Wrong join codes: with ten codes open, 20 guesses a minute over all find one of 31^6 in 8 years on
   * average. The price: who guesses on purpose can keep others from joining while they do.
   */
  guesses: { burst: 20, perSecond: 20 / 60 } as Allowance,
  guessesPerAddress: { burst: 8, perSecond: 5 / 60 } as Allowance,
  opensPerAddress: { burst: 60, perSecond: 1 } as Allowance,
  /** Sentences made into speech for one job: both phones, and a few said again. */
  voices: { burst: 30, perSecond: 1 } as Allowance,
  maxBodyBytes: 16 * 1024,
  /** A table of pairs, or a signature drawn by hand. */
  maxSiteBodyBytes: 2 * 1024 * 1024,
  /** What a site's desk asks for that is to be logged. */
  siteWritesPerAddress: { burst: 60, perSecond: 2 } as Allowance,
  /** A job nobody is connected to is put away after this. */
  roomIdleMs: 60_000,
};
export type Limits = typeof LIMITS;

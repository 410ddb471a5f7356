import {
  DEAD_AFTER_MS,
  MAX_FRAME_BYTES,
  MAX_TALK_MS,
  PING_EVERY_MS,
  SAMPLE_RATE,
} from '../../src/protocol/socket.ts';

const BYTES_PER_SAMPLE = 2;

/** How many of something at once, and how many more each second. */
export interface Allowance {
  burst: number;
  perSecond: number;
}

/** How much heavy work of one kind may be under way or wait: for one job or site, from one block of addresses, in all. */
export interface TurnLimits {
  readonly atOnce: number;
  readonly perKey: number;
  readonly perPlace: number;
  readonly all: number;
}

const DAY_S = 24 * 60 * 60;
const perDay = (most: number): Allowance => ({ burst: most, perSecond: most / DAY_S });

/** All limits of the server in one place. Tests may set lower ones. */
export const LIMITS = {
  pingEveryMs: PING_EVERY_MS,
  deadAfterMs: DEAD_AFTER_MS,
  /** A connection must say hello within this. */
  helloWithinMs: 5_000,
  /** A request's first lines, and before them the first byte and the handshake of TLS, must come within this. */
  headersWithinMs: 10_000,
  /** And the whole of it within this: a large table over a bad line. */
  requestWithinMs: 120_000,
  maxFrameBytes: MAX_FRAME_BYTES,
  maxConnections: 4_000,
  /** Of one block of addresses (see `blockOf`), so that nobody alone takes all. */
  maxConnectionsPerBlock: 3_000,
  /** Of one block, connections on which nothing came yet, and websockets that have not said hello. */
  maxSilentPerBlock: 64,
  /** Watchers of one job at once: each coming and going is told to all. */
  maxWatchers: 50,
  /** So much may wait to be sent to one phone. Above it the connection is cut, and the phone resumes. */
  maxBufferedBytes: 1024 * 1024,
  /** Entries sent in one frame of history. */
  historyBatch: 100,
  /**
   * Text frames with one token, whatever the connection, but for pings and hello, which have this of each connection.
   * After a long outage the outbox is sent at the steady rate.
   */
  messages: { burst: 60, perSecond: 20 } as Allowance,
  /** Bad frames that a connection may send before it is cut. */
  maxBadFrames: 20,
  maxTalkBytes: (MAX_TALK_MS / 1000) * SAMPLE_RATE * BYTES_PER_SAMPLE,
  /** A connection that is told "too fast" beyond this does not listen, and is ended. */
  refusals: { burst: 2_000, perSecond: 200 } as Allowance,
  /** Sound with one token, bytes: twice the rate of a microphone, for sound that had to wait. */
  sound: { burst: 1024 * 1024, perSecond: 2 * SAMPLE_RATE * BYTES_PER_SAMPLE } as Allowance,
  transcribeWithinMs: 10_000,
  /** After speech failed, it is tried this often with a moment of silence. */
  speechRetryMs: 5_000,
  codeLastsMs: 15 * 60_000,
  /** Typed join codes that were wrong, over all addresses; beyond it `guessesWhenMany` holds for each block. */
  guesses: { burst: 20, perSecond: 20 / 60 } as Allowance,
  /** For each block of addresses (see `blockOf`). */
  guessesPerAddress: { burst: 8, perSecond: 5 / 60 } as Allowance,
  /**
   * With ten codes open, 20 guesses a minute from all together and one in fifteen minutes from each of 1,000 blocks
   * find one of 31^6 in two years on average. Who guesses stops nobody but their own block, and no one who scans.
   */
  guessesWhenMany: { burst: 1, perSecond: 1 / 900 } as Allowance,
  /** A phone that asks the panel to come in: so long does its question wait, and so often may one block of addresses ask. */
  askLastsMs: 2 * 60_000,
  asksPerBlock: { burst: 6, perSecond: 1 / 30 } as Allowance,
  /** After three questions in a row without a yes, the panel gets none for this long. */
  askShutMs: 15 * 60_000,
  opensPerAddress: { burst: 60, perSecond: 1 } as Allowance,
  /** For each block of addresses; enough for a firm of five hundred crews behind one address. */
  jobsPerDay: perDay(3_000),
  sitesPerDay: perDay(500),
  /** Bytes of requests and messages that may go into a log. */
  bytesPerDay: perDay(4 * 1024 ** 3),
  /** The same for one log. A whole visit is less than 1 MiB. */
  logBytesPerDay: perDay(64 * 1024 ** 2),
  /** Reports on a job, each made while somebody waits. */
  jobReports: { atOnce: 1, perKey: 3, perPlace: 20, all: 40 } as TurnLimits,
  jobReportWithinMs: 60_000,
  /** Reports on a site. These are kept when they are ready, so the limits hold for the kept ones too. */
  siteReports: { atOnce: 1, perKey: 2, perPlace: 6, all: 12 } as TurnLimits,
  siteReportWithinMs: 30 * 60_000,
  /** Sentences for phones without a voice of their own. */
  spoken: { atOnce: 2, perKey: 6, perPlace: 30, all: 60 } as TurnLimits,
  /** Sound for the speech engine, which hears one talk at a time. Two phones of a job rarely have more than two under way. */
  talks: { atOnce: 1, perKey: 4, perPlace: 40, all: 80 } as TurnLimits,
  /** Whole logs: for pages that watch, exports. */
  records: { atOnce: 1, perKey: 60, perPlace: 300, all: 600 } as TurnLimits,
  /** Whole logs that a phone has kept alone. */
  brought: { atOnce: 1, perKey: 2, perPlace: 6, all: 12 } as TurnLimits,
  /** Boards and findings of sites. */
  boards: { atOnce: 4, perKey: 60, perPlace: 300, all: 600 } as TurnLimits,
  /** Sentences spoken for one job: for both phones, with some repeats. */
  voices: { burst: 30, perSecond: 1 } as Allowance,
  maxBodyBytes: 16 * 1024,
  /** Room for a table of as many pairs as a site may have, each with its profiles, or a signature drawn by hand. */
  maxSiteBodyBytes: 4 * 1024 * 1024,
  /** Photos of one job: a phone that was without a link sends what it has kept. */
  photos: { burst: 20, perSecond: 0.5 } as Allowance,
  /** Requests of a site's desk that go into the log. */
  siteWritesPerAddress: { burst: 60, perSecond: 2 } as Allowance,
  /** Of a processor, while logs are checked in the background. */
  checkShare: 0.05,
  /** From the end of one check of all logs to the next. */
  checkAgainMs: 10 * 60_000,
  /** When the server is asked to stop: for requests and messages that it has taken, and then for the closing of websockets. */
  finishWithinMs: 10_000,
  closeWithinMs: 1_000,
  /** A job with nobody connected is dropped from memory after this. */
  roomIdleMs: 60_000,
};
export type Limits = typeof LIMITS;

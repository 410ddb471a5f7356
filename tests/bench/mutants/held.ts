/** The files that decide safety, and the share of their mutants that has to die. The one list of both. */
export const FILES: readonly string[] = [
  'client/link/link.ts',
  'client/seat/view.ts',
  'client/speak/script.ts',
  'client/speak/speaker.ts',
  'server/connection.ts',
  'server/room.ts',
  'src/commission/attempts.ts',
  'src/commission/progress.ts',
  'src/commission/signoff.ts',
  'src/commission/verdict.ts',
  'src/engine/accept.ts',
  'src/engine/again.ts',
  'src/engine/doubt.ts',
  'src/engine/explore.ts',
  'src/engine/finish.ts',
  'src/engine/stay.ts',
  'src/engine/surprise.ts',
  'src/engine/waiting.ts',
  'src/job/hearing.ts',
  'src/job/sign.ts',
  'src/log/chain.ts',
  'src/site/standing.ts',
  'src/speech/belief.ts',
  'src/speech/weigh.ts',
];

export const SHARE = 0.95;

/**
 * The tests that hold them: pure and quick ones only, for every mutant runs all that touch it. Whole alignments,
 * random logs, servers and browsers would kill some, slowly, and say nothing of where the threshold lies.
 */
export const TESTS: readonly string[] = [
  'tests/client/letters.test.ts',
  'tests/client/lines.test.ts',
  'tests/client/link-news.test.ts',
  'tests/client/link-times.test.ts',
  'tests/client/link.test.ts',
  'tests/client/resume.test.ts',
  'tests/client/screen.test.ts',
  'tests/client/server-clock.test.ts',
  'tests/client/speaker.test.ts',
  'tests/client/spoken-on-return.test.ts',
  'tests/client/voice-limits.test.ts',
  'tests/commission/attempts.test.ts',
  'tests/commission/progress.test.ts',
  'tests/commission/signoff.test.ts',
  'tests/commission/verdict.test.ts',
  'tests/engine/*.test.ts',
  'tests/job/hearing.test.ts',
  'tests/job/signing.test.ts',
  'tests/log/*.test.ts',
  'tests/server/frames.test.ts',
  'tests/server/resume.test.ts',
  'tests/server/room.test.ts',
  'tests/site/standing.test.ts',
  'tests/speech/belief.test.ts',
  'tests/speech/weigh.test.ts',
];
export const TOO_SLOW: readonly string[] = [
  'tests/engine/procedure.test.ts',
  'tests/engine/properties.test.ts',
  'tests/engine/whole-alignment.test.ts',
];

/** The files that decide safety, and the share of their mutants that has to die. The one list of both. */
export const FILES: readonly string[] = [
  'client/link/link.ts',
  'client/seat/view.ts',
  'client/speak/script.ts',
  'client/speak/speaker.ts',
  'server/jobs/connection.ts',
  'server/jobs/room.ts',
  'src/plan/covers.ts',
  'src/visit/cover.ts',
  'src/visit/progress.ts',
  'src/visit/signoff.ts',
  'src/visit/verdict.ts',
  'src/visit/attempts.ts',
  'src/engine/accept.ts',
  'src/engine/restart.ts',
  'src/engine/doubt.ts',
  'src/engine/explore.ts',
  'src/engine/finish.ts',
  'src/engine/stay.ts',
  'src/engine/surprise.ts',
  'src/engine/waiting.ts',
  'src/conversation/decide.ts',
  'src/conversation/sign.ts',
  'src/log/chain.ts',
  'src/record/status.ts',
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
  'tests/visit/progress.test.ts',
  'tests/visit/signoff.test.ts',
  'tests/visit/threshold.test.ts',
  'tests/visit/verdict.test.ts',
  'tests/engine/*.test.ts',
  'tests/conversation/decide.test.ts',
  'tests/visit/attempts.test.ts',
  'tests/conversation/signing.test.ts',
  'tests/log/*.test.ts',
  'tests/record/status.test.ts',
  'tests/server/frames.test.ts',
  'tests/server/resume.test.ts',
  'tests/server/room.test.ts',
  'tests/speech/belief.test.ts',
  'tests/speech/weigh.test.ts',
];
export const TOO_SLOW: readonly string[] = [
  'tests/engine/procedure.test.ts',
  'tests/engine/properties.test.ts',
  'tests/engine/whole-alignment.test.ts',
];

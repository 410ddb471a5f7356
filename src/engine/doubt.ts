import type { Question } from '../model/advice.ts';
import { advice, figure, type TimedAdvice } from './advice.ts';
import { fromDb, lostDb, saturatedDb } from './level.ts';
import { lostOnReturn } from './loss.ts';
import type { Search } from './search.ts';
import { openQuestion } from './surprise.ts';
import { look, type View } from './view.ts';

/** A reading, or the turn before it, cannot be right: asks the one question that settles it. */
export function doubt(view: View): TimedAdvice | undefined {
  const { here, samples, search, surprise } = view;
  const question = here && surprise && openQuestion(search, here, surprise);
  if (!question) return earlierSlip(view) ?? lostOnReturn(view);
  const { value, sd } = surprise.expected;
  const shown = Math.min(saturatedDb(search.meter), Math.max(lostDb(search.meter), value));
  const figures = { expected: fromDb(shown, search.meter), uncertaintyDb: figure(sd) };
  const rule = question.kind === 'which-move' ? 'doubt-turn' : 'doubt-reading';
  return advice(rule, { kind: 'ask', question }, [samples[samples.length - 2], here], figures);
}

/** One turn made otherwise than reported would explain everything: was it? */
function earlierSlip({ here, slip }: View): TimedAdvice | undefined {
  if (!here || !slip) return undefined;
  const { move, turn, ago } = slip;
  const earlier = ago > 1 ? { ago } : {};
  const question: Question = { kind: 'which-move', about: move.seq, options: [turn], ...earlier };
  return advice('doubt-turn', { kind: 'ask', question }, [here]);
}

/** A reading this far below the best may later prove a side of the peak. dB. */
const SIDE_DB = 1;

/** A side must not rest on one wrong reading. */
export function readTwice(view: View): TimedAdvice | undefined {
  const { here, samples, search } = view;
  if (!here || here.level.kind === 'above') return undefined;
  if (
    here.seqs.length > 1 ||
    search.stay.breaks > 0 ||
    here.seqs.some((seq) => search.confirmed.includes(seq))
  )
    return undefined;
  const db = here.level.db;
  const isLow = samples.some(
    (s) => s.gain === here.gain && s.level.kind !== 'below' && s.level.db > db + SIDE_DB,
  );
  return isLow && !view.isForetold ? advice('read-twice', { kind: 'read' }, [here]) : undefined;
}

/** Without a model nothing foretells a reading, so each is read twice: none may rest on one wrong number. */
export function readAgain({ here }: View): TimedAdvice | undefined {
  return here && here.seqs.length < 2 ? advice('read-twice', { kind: 'read' }, [here]) : undefined;
}

/** The question was answered, and still no single beam explains it: what was known before is no longer valid. */
export function mustRestart(search: Search): boolean {
  const { here, surprise, isOneBeam } = look(search);
  if (!here || !surprise || here.level.kind === 'below') return false;
  return openQuestion(search, here, surprise) === undefined && !isOneBeam;
}

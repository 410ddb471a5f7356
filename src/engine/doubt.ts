import { fromDb, lostDb, saturatedDb } from './level.ts';
import type { Search } from './search.ts';
import { openQuestion } from './surprise.ts';
import { figure, type Told, tell } from './tell.ts';
import { look, type View } from './view.ts';

/** A reading, or the turn before it, cannot be right: the one question that settles it. */
export function doubt({ here, samples, search, surprise }: View): Told | undefined {
  const question = here && surprise && openQuestion(search, here, surprise);
  if (!question) return undefined;
  const { value, sd } = surprise.expected;
  const shown = Math.min(saturatedDb(search.meter), Math.max(lostDb(search.meter), value));
  const figures = { expected: fromDb(shown, search.meter), uncertaintyDb: figure(sd) };
  const rule = question.kind === 'which-move' ? 'doubt-turn' : 'doubt-reading';
  return tell(rule, { kind: 'ask', question }, [samples[samples.length - 2], here], figures);
}

/** Asked and answered, and still no one beam explains it: what was known before no longer holds. */
export function mustStartAnew(search: Search): boolean {
  const { here, surprise, isOneBeam } = look(search);
  if (!here || !surprise || here.level.kind === 'below') return false;
  return openQuestion(search, here, surprise) === undefined && !isOneBeam;
}

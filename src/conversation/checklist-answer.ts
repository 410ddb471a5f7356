import type { SearchFact } from '../model/facts.ts';
import { IS_THAT_RIGHT, itemText, WHO_WAS_TOLD } from '../phrases/items.ts';
import { LEAD, readBack } from '../phrases/readbacks.ts';
import { needsNote } from '../visit/commission.ts';
import { namesNobody } from '../visit/told.ts';
import type { Composer } from './composer.ts';
import { creditedInstruction } from './credit.ts';
import type { Speaker } from './speaker.ts';

type Answer = Omit<Extract<SearchFact, { type: 'item' }>, 'from'>;

/** The checklist item that is being asked, if the speaker answers it. */
export function askedItem(job: Composer, { re }: Speaker): Pick<Answer, 'list' | 'item'> | undefined {
  const action = creditedInstruction(job.state, re)?.advice.action;
  return action?.kind === 'confirm-item' ? { list: action.list, item: action.item } : undefined;
}

/** "Roger" says that the question was heard, not that the answer is yes. */
const MERELY_HEARD = /^\W*(?:ok|okay|roger|copy|copy that|will do)\W*$/iu;

/** Logs an answer to a checklist and reads it back. It matters who was told, so a "yes" alone leads to a question. */
export function answerItem(job: Composer, answer: Answer, { seat, said: from, text }: Speaker): void {
  if (answer.done && MERELY_HEARD.test(text)) {
    job.ask(from, IS_THAT_RIGHT);
    return;
  }
  if (answer.done && needsNote(answer.item) && (answer.note === undefined || namesNobody(answer.note))) {
    job.ask(from, WHO_WAS_TOLD);
    return;
  }
  const seq = job.put(seat, { ...answer, from });
  job.readback(seq, readBack(LEAD.heard, itemText(answer)));
}

import type { VisitOutcome } from '../findings/outcome.ts';
import { isTouch } from '../model/placed.ts';
import type { Visit } from '../visit/visit.ts';

/** A visit in the form that the rules of a whole site use: it does not keep the entries of its log. */
export function visitOutcome({
  entries: [first],
  end,
  accepted,
  left,
  due,
  commission: { setup, counted },
}: Visit): VisitOutcome | undefined {
  return (
    first && {
      job: first.job,
      accepted,
      left,
      due,
      signed: end.signed !== undefined,
      commission: { setup, counted: counted.filter(isTouch) },
    }
  );
}

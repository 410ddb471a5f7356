import type { Action } from '../../src/model/advice.ts';
import { follow, linkTo } from '../browser/route.ts';
import type { Room } from './use-room.ts';

/** Work at the desk: who does it, and a link to it, if this phone has the desk's key. */
export function DeskWork({ room }: { room: Room }) {
  const { order, saved, job } = room;
  const action = order.kind === 'current' ? order.instruction.advice.action : undefined;
  const asked = action && wordsFor(action, job.issues);
  if (!asked) return null;
  const { text, label } = asked;
  const href =
    saved.site &&
    (action.kind === 'finished'
      ? linkTo('board', { token: saved.site })
      : linkTo('visit', { token: saved.site, job: saved.job }));
  return (
    <div class="desk-work">
      {text && <p>{text}</p>}
      {href ? (
        <a class="button main" href={href} onClick={follow}>
          {label}
        </a>
      ) : (
        action.kind !== 'finished' && <p class="hint">At the desk: open the site's board, then this pair.</p>
      )}
    </div>
  );
}

function wordsFor(
  action: Action,
  issues: Room['job']['issues'],
): { text: string; label: string } | undefined {
  switch (action.kind) {
    case 'settle-issue': {
      const issue = issues.find(({ seq }) => seq === action.issue);
      return { text: issue?.text ?? '', label: 'Write down how it was settled' };
    }
    case 'offer-sign':
      return {
        text: 'The person responsible for this pair reads the record and signs it, with name and role.',
        label: 'Read the record and sign it',
      };
    case 'finished':
      return { text: '', label: "To the site's board" };
    default:
      return undefined;
  }
}

import { useState } from 'preact/hooks';
import type { JobId } from '../../src/model/ids.ts';
import type { Issue } from '../../src/visit/commission.ts';
import { useSend } from '../browser/use-send.ts';
import type { Picks } from '../charts/marker.tsx';
import { EntryLinks } from '../review/entry-links.tsx';
import { closeIssue } from '../site/requests.ts';
import { Field } from '../ui/field.tsx';

type Props = {
  token: string;
  job: JobId;
  issues: readonly Issue[];
  desk: boolean;
  onClosed: () => void;
} & Picks;

/** What failed and must be closed before signing: by a test that passes, or in words. */
export function Issues({ issues, ...rest }: Props) {
  if (issues.length === 0) return null;
  return (
    <section aria-labelledby="issues-title">
      <h2 id="issues-title">Issues</h2>
      <ul class="issue-list">
        {issues.map((issue) => (
          <IssueLine key={issue.seq} issue={issue} {...rest} />
        ))}
      </ul>
    </section>
  );
}

function IssueLine({ issue, desk, ...rest }: Omit<Props, 'issues'> & { issue: Issue }) {
  const { seq, about, text, closed } = issue;
  return (
    <li class={closed ? 'issue' : 'issue open'}>
      <p>
        <strong>{closed ? 'Closed' : 'Open'}</strong> {text}{' '}
        <EntryLinks seqs={[about, seq]} onPick={rest.onPick} />
      </p>
      {closed && (
        <p>
          {closed.how} <EntryLinks seqs={[closed.seq]} onPick={rest.onPick} />
        </p>
      )}
      {!closed && desk && <Answer issue={issue} {...rest} />}
    </li>
  );
}

const SHORTEST = 3;

function Answer({ token, job, issue, onClosed }: Omit<Props, 'issues' | 'desk'> & { issue: Issue }) {
  const [how, setHow] = useState('');
  const { busy, failure, send } = useSend();
  const submit = async (event: Event) => {
    event.preventDefault();
    const body = { job, issue: issue.seq, how: how.trim() };
    if (await send(body, (id, closing) => closeIssue(token, id, closing))) onClosed();
  };
  return (
    <form class="issue-answer" onSubmit={submit}>
      <Field
        label="How it was settled"
        value={how}
        hint="A test that passes closes it. Words close it too, but the finding stays in the record."
        error={failure}
        maxLength={500}
        onInput={setHow}
      />
      <button type="submit" class="button" disabled={busy || how.trim().length < SHORTEST}>
        Close it with these words
      </button>
    </form>
  );
}

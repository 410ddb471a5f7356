import { useEffect, useState } from 'preact/hooks';
import type { JobId } from '../../src/model/ids.ts';
import { keyRoleText } from '../../src/phrases/keys.ts';
import { personText } from '../../src/phrases/people.ts';
import type { Key } from '../../src/protocol/keys.ts';
import { ApiError } from '../browser/requests.ts';
import { moment } from '../browser/times.ts';
import { useSend } from '../browser/use-send.ts';
import { Failure } from '../ui/failure.tsx';
import { Twice } from '../ui/twice.tsx';
import { keysTo, newToken, withdrawKey } from './requests.ts';
import './keys.css';

interface KeyListProps {
  token: string;
  /** Of the site of `token`; without it, the job or site that the token opens. */
  visit?: JobId;
  /** A link was exchanged: from now on it has this token. */
  onExchanged: (role: 'watcher' | 'desk', next: string) => void;
}

/** Who has a key, and a way to take each away. */
export function KeyList({ token, visit, onExchanged }: KeyListProps) {
  const [keys, setKeys] = useState<readonly Key[]>();
  const [unread, setUnread] = useState<string>();
  const look = () =>
    keysTo(token, visit).then(setKeys, (error: unknown) =>
      setUnread(error instanceof ApiError ? error.message : String(error)),
    );
  useEffect(() => void look(), [token, visit]);
  if (unread !== undefined) return <Failure text={unread} />;
  if (!keys) return <p class="hint">Loading</p>;
  return (
    <ul class="keys">
      {keys.map((one) => (
        <KeyRow
          key={one.key}
          of={one}
          token={token}
          visit={visit}
          onDone={(next) => {
            if (next !== undefined && (one.role === 'watcher' || one.role === 'desk'))
              onExchanged(one.role, next);
            if (one.role !== 'desk') look();
          }}
        />
      ))}
    </ul>
  );
}

interface KeyRowProps {
  of: Key;
  token: string;
  visit: JobId | undefined;
  onDone: (next: string | undefined) => void;
}

const isLink = ({ role }: Key): boolean => role === 'watcher' || role === 'desk';

function KeyRow({ of: one, token, visit, onDone }: KeyRowProps) {
  const [next] = useState(newToken);
  const { busy, failure, send } = useSend();
  const { key, role, since, seen, online, device, people, own } = one;
  const take = async () => {
    const body = { key, ...(isLink(one) && { next }) };
    const done = await send(body, (id, said) => withdrawKey(token, visit, id, said));
    if (done) onDone(body.next);
    return done;
  };
  const names = [...people.map(personText), device].filter(Boolean).join(', ');
  return (
    <li class="key">
      <strong>{keyRoleText(role)}</strong>
      {names !== '' && <span translate={false}>{names}</span>}
      <span class="hint">
        Since <span translate={false}>{moment(since)}</span>
      </span>
      {online > 0 ? (
        <span class="hint">Connected now</span>
      ) : seen === undefined ? (
        <span class="hint">Not used since the server started</span>
      ) : (
        <span class="hint">
          Last used <span translate={false}>{moment(seen)}</span>
        </span>
      )}
      <Failure text={failure} />
      {own && !isLink(one) ? (
        <span class="hint">This phone</span>
      ) : isLink(one) ? (
        <Twice first="Change the link" second="Yes, change this link" busy={busy} onSure={take}>
          <p>The old link then opens nothing.</p>
        </Twice>
      ) : (
        <Twice first="Take this key away" second="Yes, take this key away" busy={busy} onSure={take}>
          <p>That phone is told, and loses its seat at once.</p>
        </Twice>
      )}
    </li>
  );
}

import { useState } from 'preact/hooks';
import type { PairId } from '../../src/model/pair-plan.ts';
import { useSend } from '../browser/use-send.ts';
import { dropPair } from '../site/requests.ts';
import { Field } from '../ui/field.tsx';

const SHORTEST_REASON = 3;

/** Removes a pair from the site. Its record and its visits stay. */
export function DropPair({ token, pair, onDropped }: { token: string; pair: PairId; onDropped: () => void }) {
  const [reason, setReason] = useState('');
  const { busy, failure, send } = useSend();
  const submit = async (event: Event) => {
    event.preventDefault();
    const body = { pair, reason: reason.trim() };
    if (await send(body, (id, dropped) => dropPair(token, id, dropped))) onDropped();
  };
  return (
    <details class="more">
      <summary>Remove {pair} from the site</summary>
      <form class="drop-pair" onSubmit={submit}>
        <Field
          label="Why"
          value={reason}
          hint="Its visits and this reason stay in the record. To bring it back, plan it again."
          error={failure}
          maxLength={500}
          onInput={setReason}
        />
        <button type="submit" class="button danger" disabled={busy || reason.trim().length < SHORTEST_REASON}>
          Remove it
        </button>
      </form>
    </details>
  );
}

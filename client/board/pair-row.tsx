import { useMemo } from 'preact/hooks';
import { whoIsOn } from '../../src/phrases/presence.ts';
import type { PairRow as Row } from '../../src/protocol/site.ts';
import { follow, linkTo } from '../browser/route.ts';
import { StatusSign } from '../site/status-chip.tsx';

/** One pair on the board. It is drawn again only when its row has changed. */
export function PairRow({ row, token, warning }: Props) {
  return useMemo(() => <Drawn row={row} token={token} warning={warning} />, [row, token, warning]);
}

interface Props {
  row: Row;
  token: string;
  /** What the plan check warns of, in short. */
  warning: string | undefined;
}

function Drawn({ row, token, warning }: Props) {
  const { plan, status, next, visits, signed } = row;
  const latest = visits.at(-1);
  const href = latest
    ? linkTo('visit', { token, job: latest.job })
    : linkTo('plan', { token, pair: plan.id });
  // A signature that is no longer valid is not shown on the board.
  const by = status === 'signed' ? signed : undefined;
  const here = row.online.panel || row.online.emitter;
  return (
    <li class="pair-row">
      <a class="pair-open" href={href} onClick={follow}>
        <span class="pair-id">
          <strong>{plan.id}</strong>
          {plan.name !== plan.id && <span>{plan.name}</span>}
          {plan.zone && <small>zone {plan.zone}</small>}
        </span>
        <StatusSign status={status} />
        <span class="pair-next">
          <small>{by ? 'Signed by' : 'Next'}</small>
          {by ? `${by.name}, ${by.role}` : next}
        </span>
        <span class={here ? 'pair-who here' : 'pair-who'}>
          <small>On it</small>
          {whoIsOn(row)}
        </span>
        <span class="pair-final">
          <small>Final reading</small>
          {finalText(row)}
        </span>
        <Counts row={row} />
        {warning && (
          <span class="pair-warning">
            <small>Plan check</small>
            {warning}
          </span>
        )}
      </a>
      <a class="pair-plan-link" href={linkTo('plan', { token, pair: plan.id })} onClick={follow}>
        Plan<span class="away"> of {plan.id}</span>
      </a>
    </li>
  );
}

function finalText({ status, final, visits }: Row): string {
  if (!status) return 'not read yet';
  return final ?? (visits.length > 0 ? 'none' : 'none yet');
}

function Counts({ row: { status, findings, visits } }: { row: Row }) {
  const { serious, question, note } = findings;
  const counts = [
    serious > 0 && `${serious} serious`,
    question > 0 && `${question} to ask`,
    note > 0 && `${note} to know`,
  ].filter((text) => text !== false);
  return (
    <span class={serious > 0 ? 'pair-findings serious' : 'pair-findings'}>
      <small>Findings</small>
      {status ? counts.join(', ') || (visits.length > 0 ? 'none' : 'no visit yet') : 'not read yet'}
    </span>
  );
}

import type { ComponentChildren } from 'preact';
import type { PairStatus } from '../../src/model/pair-status.ts';
import { STATUS_WORDS } from '../../src/phrases/statuses.ts';

/** Each status has its own shape and word: colour alone is never needed. */
const SHAPES: Record<PairStatus, ComponentChildren> = {
  'not-started': <circle class="hollow" cx="20" cy="20" r="15" stroke-dasharray="7 5" />,
  aligning: (
    <>
      <circle class="hollow" cx="20" cy="20" r="15" />
      <path d="M20 5a15 15 0 0 1 0 30z" />
    </>
  ),
  isolated: <path d="M13 3h14l10 10v14L27 37H13L3 27V13zM11 17v6h18v-6z" fill-rule="evenodd" />,
  aligned: <circle cx="20" cy="20" r="16" />,
  proven: <path d="M4 21 10 15l7 7L31 7l6 6-20 21z" />,
  signed: <path d="M3 3h34v34H3zM9 21l8 9L32 13l-4-4-11 13-4-5z" fill-rule="evenodd" />,
  'signed-not-proven': (
    <path d="M3 3h34v34H3zM9 9v22h22V9zM18 12v10h4V12zM18 25v4h4v-4z" fill-rule="evenodd" />
  ),
  'needs-attention': <path d="M20 3 39 36H1zM18 15v11h4V15zM18 29v4h4v-4z" fill-rule="evenodd" />,
};

export const StatusShape = ({ status }: { status: PairStatus }) => (
  <svg class="status-shape" viewBox="0 0 40 40" aria-hidden="true">
    {SHAPES[status]}
  </svg>
);

/** Without a status: the record is not read yet. */
export const StatusSign = ({ status }: { status: PairStatus | undefined }) =>
  status ? (
    <span class={`status-sign is-${status}`}>
      <StatusShape status={status} />
      {STATUS_WORDS[status]}
    </span>
  ) : (
    <span class="status-sign">Not read yet</span>
  );

import type { ComponentChildren } from 'preact';
import type { PairStanding } from '../../src/model/pair-status.ts';
import { STANDING_WORDS } from '../../src/phrases/statuses.ts';

/** Each standing has a shape of its own beside its word, so that none rests on colour. */
const SHAPES: Record<PairStanding, ComponentChildren> = {
  'not-started': <circle class="hollow" cx="20" cy="20" r="15" stroke-dasharray="7 5" />,
  aligning: (
    <>
      <circle class="hollow" cx="20" cy="20" r="15" />
      <path d="M20 5a15 15 0 0 1 0 30z" />
    </>
  ),
  aligned: <circle cx="20" cy="20" r="16" />,
  proven: <path d="M4 21 10 15l7 7L31 7l6 6-20 21z" />,
  signed: <path d="M3 3h34v34H3zM9 21l8 9L32 13l-4-4-11 13-4-5z" fill-rule="evenodd" />,
  'needs-attention': <path d="M20 3 39 36H1zM18 15v11h4V15zM18 29v4h4v-4z" fill-rule="evenodd" />,
};

export const StandingShape = ({ standing }: { standing: PairStanding }) => (
  <svg class="standing-shape" viewBox="0 0 40 40" aria-hidden="true">
    {SHAPES[standing]}
  </svg>
);

/** Without a standing: the record is still being read. */
export const StandingSign = ({ standing }: { standing: PairStanding | undefined }) =>
  standing ? (
    <span class={`standing-sign is-${standing}`}>
      <StandingShape standing={standing} />
      {STANDING_WORDS[standing]}
    </span>
  ) : (
    <span class="standing-sign">Being read</span>
  );

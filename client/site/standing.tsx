import type { ComponentChildren } from 'preact';
import type { PairStanding } from '../../src/site/standing.ts';

/** How each standing looks: a word and a shape of its own, so that none rests on colour. */
const LOOKS: Record<PairStanding, { word: string; shape: ComponentChildren }> = {
  'not-started': {
    word: 'Not started',
    shape: <circle class="hollow" cx="20" cy="20" r="15" stroke-dasharray="7 5" />,
  },
  aligning: {
    word: 'Aligning',
    shape: (
      <>
        <circle class="hollow" cx="20" cy="20" r="15" />
        <path d="M20 5a15 15 0 0 1 0 30z" />
      </>
    ),
  },
  aligned: { word: 'Aligned', shape: <circle cx="20" cy="20" r="16" /> },
  proven: { word: 'Proven', shape: <path d="M4 21 10 15l7 7L31 7l6 6-20 21z" /> },
  signed: {
    word: 'Signed',
    shape: <path d="M3 3h34v34H3zM9 21l8 9L32 13l-4-4-11 13-4-5z" fill-rule="evenodd" />,
  },
  'needs-attention': {
    word: 'Needs attention',
    shape: <path d="M20 3 39 36H1zM18 15v11h4V15zM18 29v4h4v-4z" fill-rule="evenodd" />,
  },
};

export const standingWord = (standing: PairStanding): string => LOOKS[standing].word;

export const StandingShape = ({ standing }: { standing: PairStanding }) => (
  <svg class="standing-shape" viewBox="0 0 40 40" aria-hidden="true">
    {LOOKS[standing].shape}
  </svg>
);

export const StandingSign = ({ standing }: { standing: PairStanding }) => (
  <span class={`standing-sign is-${standing}`}>
    <StandingShape standing={standing} />
    {standingWord(standing)}
  </span>
);

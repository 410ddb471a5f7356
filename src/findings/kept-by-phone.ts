import { found, type Look } from './look.ts';

/** Nobody but the phone vouches for what it kept before the server had the log. */
export const keptByPhone: Look = ({ entries }) =>
  entries.flatMap(({ seq, fact }) =>
    fact.type === 'brought'
      ? [found('kept-by-phone', { severity: 'question', entries: [seq], figures: { count: seq } })]
      : [],
  );

import { found, type Look } from './look.ts';

/** Another phone, and perhaps another person, took over a seat. */
export const takeover: Look = ({ entries }) =>
  entries.flatMap(({ seq, fact }) =>
    fact.type === 'seated' && fact.takeover
      ? [
          found('takeover', {
            severity: 'note',
            entries: [seq],
            about: [fact.seat, ...(fact.person ? [fact.person.name] : [])],
          }),
        ]
      : [],
  );

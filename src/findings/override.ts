import { found, type Look } from './look.ts';

/** Accepted although evidence was missing, with a reason. */
export const override: Look = ({ commission: { counted } }) =>
  counted.flatMap((fact) =>
    fact.type === 'accept' && fact.override
      ? [found('override', { severity: 'serious', entries: [fact.seq], about: fact.override.missing })]
      : [],
  );

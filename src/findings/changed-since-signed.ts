import { found, type Look } from './look.ts';

export const changedSinceSigned: Look = ({ end: { signed, changedBy } }) =>
  signed && changedBy !== undefined
    ? [found('changed-since-signed', { severity: 'serious', entries: [signed.seq, changedBy] })]
    : [];

import canonicalize from 'canonicalize';

/** The same plain data, whatever the order of its keys: an entry read back from a store has them sorted. */
export const isSame = (a: unknown, b: unknown): boolean => canonicalize(a) === canonicalize(b);

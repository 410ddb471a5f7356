/**
 * Counted up whenever the same log would get other advice or other findings: an honest log of another
 * version cannot be held against this one's.
 */
export const ENGINE_VERSION = 4;

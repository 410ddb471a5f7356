/**
 * Raised whenever the same log would get other advice or other findings: an honest log of another version
 * cannot be compared with this one.
 */
export const ENGINE_VERSION = 13;

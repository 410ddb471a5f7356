import type { Pass } from './store.ts';

const REVOKED: readonly Pass['revoked'][] = [false, 'seat-lost', 'revoked'];

/** What the number in a database means. */
export const revokedOf = (stored: number): Pass['revoked'] => REVOKED[stored] ?? 'revoked';

import { AXES } from '../model/turns.ts';
import { found, type Look } from './look.ts';

/** A peak was accepted without a lower settled reading on each side of it. */
export const notBracketed: Look = ({ accepted }) => {
  const about = AXES.filter((axis) => accepted?.missing.some(({ id }) => id === `bracket-${axis}`));
  if (!accepted || about.length === 0) return [];
  return [found('not-bracketed', { severity: 'serious', entries: [accepted.seq], about })];
};

import type { Sentences } from '../translate.ts';

/** How far a pair is. */
export const STATUSES: Sentences = {
  'Not started': 'Pas commencé',
  Aligning: 'Alignement en cours',
  'Outputs isolated': 'Sorties isolées',
  'Aligned, not proven': 'Aligné, pas essayé',
  'Proven, not signed': 'Essayé, pas signé',
  'Signed, not proven': 'Signé, pas essayé',
  'Needs attention': 'Demande attention',
  'Not read yet': 'Pas encore lu',
};

import type { Sentences } from '../translate.ts';

/** How far a pair is. */
export const STATUSES: Sentences = {
  'Not started': 'Sin empezar',
  Aligning: 'Alineando',
  'Outputs isolated': 'Salidas anuladas',
  'Aligned, not proven': 'Alineado, sin probar',
  'Proven, not signed': 'Probado, sin firmar',
  'Signed, not proven': 'Firmado, sin probar',
  'Needs attention': 'Requiere atención',
  'Not read yet': 'Sin leer todavía',
};

import type { Sentences } from '../translate.ts';

/** How far a pair is. */
export const STATUSES: Sentences = {
  'Not started': 'Nicht begonnen',
  Aligning: 'Wird ausgerichtet',
  'Outputs isolated': 'Ausgänge abgeschaltet',
  'Aligned, not proven': 'Ausgerichtet, nicht geprüft',
  'Proven, not signed': 'Geprüft, nicht unterschrieben',
  'Signed, not proven': 'Unterschrieben, nicht geprüft',
  'Needs attention': 'Braucht Aufmerksamkeit',
  'Not read yet': 'Noch nicht gelesen',
};

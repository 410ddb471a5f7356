import type { Sentences } from '../translate.ts';

export const CAUTIONS: Sentences = {
  'Isolate the alarm outputs at the panel. Tell everybody who relies on them.':
    'Anule las salidas de alarma en la central. Avise a todos los que dependen de ellas.',
  'On the ladder, keep three points of contact. Keep your hands free: leave the phone on its lanyard.':
    'En la escalera, mantenga tres puntos de apoyo. Manos libres: deje el teléfono en su cordón.',
  'Never look into an aiming laser.': 'No mire nunca a un láser de puntería.',
  "The maker's instructions and local rules come first.":
    'Las instrucciones del fabricante y las normas locales van primero.',
  'Never look into the laser.': 'No mire nunca al láser.',
  'Cautions read and understood': 'Precauciones leídas y entendidas',
  'Restore the alarm outputs. Put the covers back. Check that the panel is normal.':
    'Restablezca las salidas de alarma. Ponga las tapas. Compruebe que la central está normal.',
  'Before you climb': 'Antes de subir',
  'Before they climb': 'Antes de que suban',
  Understood: 'Entendido',
  Cautions: 'Precauciones',
};

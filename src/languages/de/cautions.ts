import type { Sentences } from '../translate.ts';

export const CAUTIONS: Sentences = {
  'Isolate the alarm outputs at the panel. Tell everybody who relies on them.':
    'Alarmausgänge an der Zentrale abschalten. Alle informieren, die sich darauf verlassen.',
  'On the ladder, keep three points of contact. Keep your hands free: leave the phone on its lanyard.':
    'Auf der Leiter immer drei Kontaktpunkte. Hände frei halten: Telefon am Band lassen.',
  'Never look into an aiming laser.': 'Niemals in einen Ziellaser blicken.',
  "The maker's instructions and local rules come first.":
    'Die Anleitung des Herstellers und die örtlichen Regeln gehen vor.',
  'Never look into the laser.': 'Niemals in den Laser blicken.',
  'Cautions read and understood': 'Warnungen gelesen und verstanden',
  'Restore the alarm outputs. Put the covers back. Check that the panel is normal.':
    'Alarmausgänge wieder einschalten. Deckel wieder aufsetzen. Prüfen, dass die Zentrale normal ist.',
  'Before you climb': 'Bevor Sie hinaufsteigen',
  'Before they climb': 'Bevor die anderen hinaufsteigen',
  Understood: 'Verstanden',
  Cautions: 'Warnungen',
};

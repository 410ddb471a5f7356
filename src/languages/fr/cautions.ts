import type { Sentences } from '../translate.ts';

export const CAUTIONS: Sentences = {
  'Isolate the alarm outputs at the panel. Tell everybody who relies on them.':
    "Isolez les sorties d'alarme à la centrale. Prévenez tous ceux qui comptent dessus.",
  'On the ladder, keep three points of contact. Keep your hands free: leave the phone on its lanyard.':
    "Sur l'échelle, gardez trois points d'appui. Gardez les mains libres: laissez le téléphone à son cordon.",
  'Never look into an aiming laser.': 'Ne regardez jamais un laser de visée.',
  "The maker's instructions and local rules come first.":
    'Les instructions du fabricant et les règles locales priment.',
  'Never look into the laser.': 'Ne regardez jamais le laser.',
  'Cautions read and understood': 'Consignes lues et comprises',
  'Restore the alarm outputs. Put the covers back. Check that the panel is normal.':
    "Rétablissez les sorties d'alarme. Remettez les capots. Vérifiez que la centrale est normale.",
  'Before you climb': 'Avant de monter',
  'Before they climb': "Avant qu'ils montent",
  Understood: 'Compris',
  Cautions: 'Précautions',
};

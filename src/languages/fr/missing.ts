import type { Sentences } from '../translate.ts';

export const MISSING: Sentences = {
  'a settled reading here': 'une valeur stabilisée ici',
  'a clear path': 'un trajet dégagé',
  'a reading that is not saturated: lower the gain': 'une valeur non saturée: baissez le gain',
  'a reading in the band': 'une valeur dans la bande',
  'lower settled readings on both sides of the horizontal peak, at this gain':
    'des valeurs stabilisées plus basses des deux côtés du maximum horizontal, à ce gain',
  'lower settled readings on both sides of the vertical peak, at this gain':
    'des valeurs stabilisées plus basses des deux côtés du maximum vertical, à ce gain',
  'the adjusters at the peak, and a reading next to it': 'les vis au maximum, et une valeur à côté',
  'a reading where a stronger peak may be': 'une valeur là où un maximum plus fort peut être',
  'the highest reading seen at this gain': 'la plus haute valeur vue à ce gain',
  'the blocking check: blocked, the reading must go to nothing and come back the same':
    "l'essai de masquage: masqué, la valeur doit tomber à rien puis revenir la même",
  'a reading that holds steady': 'une valeur qui tient',
  'a fresh reading': 'une valeur récente',
  'an answer to the open question': 'une réponse à la question ouverte',
  'an alignment that nobody touched on this visit':
    "un alignement que personne n'a touché pendant cette visite",
  'an answer whether the windows were cleaned': 'une réponse sur le nettoyage des vitres',
  'the signal that the last visit left': 'le signal laissé à la dernière visite',
  'Still missing:': 'Il manque encore:',
  'The next steps give this evidence.': 'Les prochaines étapes donnent cette preuve.',
  'Nothing was turned, and the signal is what the last visit left.':
    "Rien n'a été tourné, et le signal est celui laissé à la dernière visite.",
  'Keep the alignment': "Garder l'alignement",
  'All the evidence is complete.': 'Toutes les preuves sont là.',
  'Not proven yet': 'Pas encore prouvé',
  'Accept against the evidence': 'Accepter malgré les preuves manquantes',
  Reason: 'Raison',
  'This reason and all that is missing stay in the record for ever, on its first page.':
    'Cette raison et tout ce qui manque restent pour toujours dans le registre, à la première page.',
  'Accept with this reason': 'Accepter avec cette raison',
};

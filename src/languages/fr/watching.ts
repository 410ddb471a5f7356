import type { Sentences } from '../translate.ts';

/** Who watches, and what they say. */
export const WATCHING: Sentences = {
  '{x} is watching and says: {x1}': '{x} regarde et dit: {x1}',
  '{x} watching': '{x} regarde',
  '{x} and {n} more watching': '{x} et {n} de plus regardent',
  'Say something to the crew': "Dire quelque chose à l'équipe",
  'Both phones show it and say it. It stays in the record, under your name.':
    "Les deux téléphones l'affichent et le disent. Cela reste dans le registre, à votre nom.",
  'Your remark': 'Votre remarque',
  'Send to the crew': "Envoyer à l'équipe",
  'One remark waits to be sent.': "Une remarque attend d'être envoyée.",
  '{n} remarks wait to be sent.': "{n} remarques attendent d'être envoyées.",
  'The remark is in the record.': 'La remarque est dans le registre.',
};

import type { Sentences } from '../translate.ts';

/** Who read what: the page of an administrator. */
export const WHO_READ: Sentences = {
  'Who read what is for an administrator with an account. This server has no accounts, and knows readers by their links alone.':
    'Qui a lu quoi est pour l’administration avec un compte. Ce serveur n’a pas de comptes et ne connaît les lecteurs que par leurs liens.',
  'One line for each reader, record and hour. Who is not signed in is known only by the link that was used.':
    'Une ligne par lecteur, rapport et heure. De qui n’est pas connecté, on ne connaît que le lien utilisé.',
  'Nothing was read yet.': 'Rien n’a encore été lu.',
  Record: 'Rapport',
  'Board of the site': 'Tableau du site',
  'Report as PDF': 'Rapport en PDF',
  Export: 'Export',
  'Who read what': 'Qui a lu quoi',
  'A name that was deleted': 'Un nom qui a été effacé',
  'Only an administrator sees who read what.': 'Seule l’administration voit qui a lu quoi.',
  'Show all records': 'Montrer tous les rapports',
  'Show older ones': 'Montrer les plus anciens',
  'In the hour from': 'Dans l’heure à partir de',
  'Only this record': 'Seulement ce rapport',
};

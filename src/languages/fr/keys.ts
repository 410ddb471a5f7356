import type { Sentences } from '../translate.ts';

export const KEYS: Sentences = {
  'The key of this phone was taken away by the panel or the desk. What the server had acknowledged is in the record; what still waits here was not sent.':
    "La centrale ou le bureau a retiré la clé de ce téléphone. Ce que le serveur avait confirmé est dans le rapport ; ce qui attend encore ici n'a pas été envoyé.",
  'Only the panel phone and the desk see and change who has a key.':
    'Seuls le téléphone de la centrale et le bureau voient et changent qui a une clé.',
  'There is no such key, or it was taken away before.': "Cette clé n'existe pas, ou elle a déjà été retirée.",
  'A phone cannot take its own key away. Leave the job instead.':
    'Un téléphone ne peut pas retirer sa propre clé. Quittez le travail.',
  'The link of the desk is only exchanged for another one: give "next".':
    'Le lien du bureau ne peut être que remplacé par un autre : donnez "next".',
  'Only links are exchanged. Whoever is to have a seat joins with a code.':
    'Seuls les liens sont remplacés. Pour une place, on rejoint avec un code.',
  'Panel phone': 'Téléphone de la centrale',
  'Emitter phone': "Téléphone de l'émetteur",
  'Link of the desk': 'Lien du bureau',
  '{what}: its key was taken away': '{what} : sa clé a été retirée',
  'Who has a key': 'Qui a une clé',
  Since: 'Depuis',
  'Connected now': 'Connecté maintenant',
  'Not used since the server started': 'Pas utilisé depuis le démarrage du serveur',
  'Last used': 'Dernière utilisation',
  'This phone': 'Ce téléphone',
  'The old link then opens nothing.': "L'ancien lien n'ouvre alors plus rien.",
  'That phone is told, and loses its seat at once.': 'Ce téléphone est prévenu et perd sa place aussitôt.',
  'Yes, change this link': 'Oui, changer ce lien',
  'Yes, take this key away': 'Oui, retirer cette clé',
  'Change the link': 'Changer le lien',
  'Take this key away': 'Retirer cette clé',
  'This key was taken away': 'Cette clé a été retirée',
  'To come back, ask the panel or the desk for a new code.':
    'Pour revenir, demandez un nouveau code à la centrale ou au bureau.',
  'This was not sent. Tell it to your colleague, or write it down:':
    "Ceci n'a pas été envoyé. Dites-le à votre collègue, ou notez-le :",
};

import type { Sentences } from '../translate.ts';

export const INVITATION: Sentences = {
  'Code for the emitter phone': "Code pour le téléphone de l'émetteur",
  'Code for the panel phone': 'Code pour le téléphone de la centrale',
  'A code for the emitter phone': "Un code pour le téléphone de l'émetteur",
  'A code for the panel phone': 'Un code pour le téléphone de la centrale',
  'Link to join': 'Lien pour rejoindre',
  Share: 'Partager',
  Copied: 'Copié',
  'Asking for a code.': "Demande d'un code.",
  'It comes when there is a link.': "Il vient dès qu'il y a une liaison.",
  'Ask again': 'Redemander',
  'For one phone, once. Valid for {n} more minutes.':
    'Pour un téléphone, une fois. Valable encore {n} minutes.',
  'For one phone, once. Valid for one more minute.':
    'Pour un téléphone, une fois. Valable encore une minute.',
  'By name, where a device finds it:': "Par son nom, si l'appareil le trouve :",
  'This page was opened as {x}, which only this device can reach. Open it at the network address that the server prints. Then the other phone can join.':
    "Cette page a été ouverte comme {x}, que seul cet appareil peut atteindre. Ouvrez-la à l'adresse réseau que le serveur affiche. L'autre téléphone pourra alors rejoindre.",
};

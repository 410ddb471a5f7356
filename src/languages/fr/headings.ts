import type { Sentences } from '../translate.ts';

export const HEADINGS: Sentences = {
  Question: 'Question',
  'Nothing to do': 'Rien à faire',
  'Waiting for you': 'Vous attend',
  Stopped: 'Arrêté',
  'No link': 'Pas de liaison',
  Gain: 'Gain',
  'Hands off': 'Ne pas toucher',
  'Aim by eye': "Viser à l'œil",
  'Beam path': 'Trajet du faisceau',
  Receiver: 'Récepteur',
  'Watch the panel': 'Surveiller la centrale',
  Checklist: 'Liste de contrôle',
  'Open issue': 'Point ouvert',
  'Ready to sign': 'Prêt à signer',
  Check: 'Vérifier',
  Finished: 'Terminé',
  'for the panel': 'pour la centrale',
  'for the emitter': "pour l'émetteur",
  'for the both': 'pour les deux',
  'connecting again': 'reconnexion',
  nearly: 'presque',
  Waiting: 'En attente',
  'There is no step until one of you says go on.':
    "Pas d'étape tant que l'un de vous ne dit pas «continuer».",
  'Emitter: ready?': 'Émetteur: prêt?',
  'Emitter away': 'Émetteur absent',
  'There is no step until one of you starts again.': "Pas d'étape tant que l'un de vous ne redémarre pas.",
  'Waiting for the panel phone': 'En attente du téléphone de la centrale',
  'Waiting for the emitter phone': "En attente du téléphone de l'émetteur",
  'The first step comes when both have joined.': 'La première étape vient quand les deux sont là.',
  'There is no step now. Go on, or say what the meter shows.':
    "Pas d'étape maintenant. Continuez, ou dites ce qu'affiche l'appareil.",
  'Hold. Do not turn': 'Attendez. Ne tournez pas',
  'Asked before:': 'Demandé avant:',
  '. If it is already done, say so.': ". Si c'est déjà fait, dites-le.",
  'The panel phone is away. This step waits for it.':
    "Le téléphone de la centrale est absent. Cette étape l'attend.",
  'The emitter phone is away. This step waits for it.':
    "Le téléphone de l'émetteur est absent. Cette étape l'attend.",
};

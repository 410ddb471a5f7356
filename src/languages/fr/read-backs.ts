import type { Sentences } from '../translate.ts';

export const READ_BACKS: Sentences = {
  'Heard: {what}.': 'Entendu: {what}.',
  'Well done: {what}.': 'Bien fait: {what}.',
  'Kept as the last visit left it: {what}.': 'Gardé comme laissé à la dernière visite: {what}.',
  'Turned the other way: {what}.': "Tourné dans l'autre sens: {what}.",
  'The other adjuster: {what}.': "L'autre vis: {what}.",
  'Corrected: {what}.': 'Corrigé: {what}.',
  'Corrected: {what}, not {not}.': 'Corrigé: {what}, et non {not}.',
  'Taken back: {what}.': 'Annulé: {what}.',
  'Noted: {x}.': 'Noté: {x}.',
  'Issue closed: {x}': 'Point clos: {x}',
  'Left out. Nothing was taken down.': "Omis. Rien n'a été noté.",
  'Not turned.': 'Pas tourné.',
  'Waiting. Say "go on" when ready.': 'En attente. Dites «continuer» quand vous êtes prêt.',
  'Stopped. Say "start" to go on.': 'Arrêté. Dites «démarrer» pour reprendre.',
  'There is no instruction now.': "Il n'y a pas de consigne pour le moment.",
  'No word for a while. Say a reading, or "go on".':
    'Plus rien depuis un moment. Dites une valeur, ou «continuer».',
  'The emitter phone is away. The next order waits for it.':
    "Le téléphone de l'émetteur est absent. La prochaine consigne l'attend.",
  'This cannot go on without it. Say "go on" to try again, or "stop", and note why.':
    'Impossible de continuer sans cela. Dites «continuer» pour réessayer, ou «stop», et notez pourquoi.',
  'Emitter: say ready for the next order.': 'Émetteur: dites «prêt» pour la prochaine consigne.',
  'Noted, but there is nothing to do now.': "Noté, mais il n'y a rien à faire maintenant.",
  'The ladder asks: what does the meter show?': "L'échelle demande: qu'affiche l'appareil?",
  'Accepted by override. The reason stays in the record.':
    'Accepté sans toutes les preuves. La raison reste dans le registre.',
  'Was the screw really turned ({turn})? Then turn it back, or say what was turned.':
    'La vis a-t-elle vraiment été tournée ({turn})? Alors revenez en arrière, ou dites ce qui a été tourné.',
  'I heard nothing. Hold the button while you speak.':
    "Je n'ai rien entendu. Gardez le bouton appuyé en parlant.",
  'Speech is not available. Please type.':
    "La reconnaissance vocale n'est pas disponible. Tapez, s'il vous plaît.",
  'Speech took too long. Say it again, or type.':
    'La reconnaissance a pris trop de temps. Redites, ou tapez.',
  'Speech failed. Say it again, or type.': 'La reconnaissance a échoué. Redites, ou tapez.',
  'That was cut off. Please say it again.': "C'était coupé. Redites, s'il vous plaît.",
  'Not yet. Missing: {needs}.': 'Pas encore. Il manque: {needs}.',
};

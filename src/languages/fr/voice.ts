import type { Sentences } from '../translate.ts';

export const VOICE: Sentences = {
  'The bracket is loose on its upper bolt.': 'Le support a du jeu sur son boulon supérieur.',
  'Speech on this phone is off. Turn it on': "La reconnaissance sur ce téléphone est coupée. L'activer",
  'Speech on this phone is loading': 'La reconnaissance sur ce téléphone se charge',
  'Speech on this phone is on. Turn it off': 'La reconnaissance sur ce téléphone est activée. La couper',
  'While there is no link, this phone then hears you itself, and keeps your words to send later.':
    'Sans liaison, ce téléphone vous entend alors lui-même, et garde vos mots pour les envoyer plus tard.',
  'The microphone is off: this page came over plain http. Type instead, or':
    'Le micro est coupé: cette page est venue par http simple. Tapez, ou',
  'turn it on': "l'activer",
  'Too loud: hold the phone further away.': 'Trop fort: éloignez le téléphone.',
  'Too loud here: type the numbers.': 'Trop de bruit ici: tapez les nombres.',
  'Opening the microphone': 'Ouverture du micro',
  'Hands-free: just speak. Tap to stop': 'Mains libres: parlez. Toucher pour arrêter',
  'Hearing you': 'Vous entend',
  'Listening. Tap to send': 'Écoute. Toucher pour envoyer',
  'Listening. Let go to send': 'Écoute. Relâcher pour envoyer',
  'Turning it into words': 'Mise en mots',
  'No words were heard. Say it again, or type it.': 'Aucun mot entendu. Redites, ou tapez.',
  'There is no link now. Type it, or turn on speech on this phone in the menu: your words are kept and sent later.':
    'Pas de liaison maintenant. Tapez, ou activez la reconnaissance sur ce téléphone dans le menu: vos mots sont gardés et envoyés plus tard.',
  'The link was lost. Say it again when it is back, or type it: typed words are kept.':
    'La liaison a été perdue. Redites quand elle revient, ou tapez: ce qui est tapé est gardé.',
  'The speech model could not be loaded. Turn it on again when there is a link, or type instead.':
    "Le modèle vocal n'a pas pu être chargé. Réactivez-le quand il y a une liaison, ou tapez.",
  'Talking could not be loaded. Try again when there is a link, or type instead.':
    "La parole n'a pas pu être chargée. Réessayez quand il y a une liaison, ou tapez.",
  'Hands-free talk stopped: {why}': 'Mains libres arrêté: {why}',
  'This phone is too slow for it.': 'Ce téléphone est trop lent pour cela.',
  'the voice detector gave no answer': "le détecteur de voix n'a pas répondu",
  'the speech model gave no letters': "le modèle vocal n'a donné aucune lettre",
  'the speech model is not available: {why}': "le modèle vocal n'est pas disponible: {why}",
  'The microphone gives no sound. Close other apps that use it, then try again, or type instead.':
    "Le micro ne donne aucun son. Fermez les autres applications qui l'utilisent, puis réessayez, ou tapez.",
  'Browsers allow the microphone only on a secure page. Type instead. The page /trust of this server says how to turn it on.':
    "Les navigateurs ne permettent le micro que sur une page sûre. Tapez. La page /trust de ce serveur dit comment l'activer.",
  "The microphone is not allowed. Allow it for this page in the browser's site settings, or type instead.":
    "Le micro n'est pas autorisé. Autorisez-le pour cette page dans les réglages du navigateur, ou tapez.",
  'This device has no microphone. Type instead.': "Cet appareil n'a pas de micro. Tapez.",
  'Another app is using the microphone. Close it and try again, or type instead.':
    'Une autre application utilise le micro. Fermez-la et réessayez, ou tapez.',
  'The microphone could not be opened: {x}. Type instead.': "Le micro n'a pas pu être ouvert: {x}. Tapez.",
  'There is no speech engine here. Type it.': "Il n'y a pas de reconnaissance vocale ici. Tapez.",
  'Sound must come in whole samples of two bytes.':
    'Le son doit venir en échantillons entiers de deux octets.',
  'Sound comes too fast. Say it again.': 'Le son vient trop vite. Redites.',
  'No such talk is open here. Say it again.': "Cette prise de parole n'est pas ouverte ici. Redites.",
  'Read the screen.': "Lisez l'écran.",
  'This server was started without a voice. {more}': 'Ce serveur a été démarré sans voix. {more}',
  'There is nothing to say in this text.': "Il n'y a rien à dire dans ce texte.",
  'This phone keeps no copy of the pages: they came over plain http, or under a certificate that it does not trust. Without a link, do not load this page again: it would not open.':
    "Ce téléphone ne garde pas de copie des pages: elles sont venues par http simple, ou avec un certificat auquel il ne fait pas confiance. Sans liaison, ne rechargez pas cette page: elle ne s'ouvrirait pas.",
  'A new version of this page is here. It waits until no job is open on this phone: then the start page takes it.':
    "Une nouvelle version de cette page est là. Elle attend qu'aucun travail ne soit ouvert sur ce téléphone: alors la page de départ la prend.",
  'The speech model is on this phone.': 'Le modèle vocal est sur ce téléphone.',
  'The speech model is not on this phone yet. It is fetched once, about {n} MB, while there is a link.':
    "Le modèle vocal n'est pas encore sur ce téléphone. Il est chargé une fois, environ {n} Mo, quand il y a une liaison.",
};

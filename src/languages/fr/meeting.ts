import type { Sentences } from '../translate.ts';

/** Two phones that find each other without a server. */
export const MEETING: Sentences = {
  'The other phone, without a server': "L'autre téléphone, sans serveur",
  'Meet the other phone again': "Retrouver l'autre téléphone",
  "Meet the panel's phone": 'Trouver le téléphone de la centrale',
  "No server? Meet the panel's phone": 'Pas de serveur ? Trouver le téléphone de la centrale',
  'Both phones must be in the same Wi-Fi, or one in the hotspot of the other.':
    "Les deux téléphones doivent être sur le même Wi-Fi, ou l'un sur le partage de connexion de l'autre.",
  '1. Scan this with the other phone: with its camera app, or on its page for a code.':
    "1. Scannez ceci avec l'autre téléphone : avec son appareil photo, ou sur sa page pour un code.",
  'Square code of this meeting': 'Code carré de cette rencontre',
  '2. The other phone shows a code then. Scan it here.':
    "2. L'autre téléphone affiche alors un code. Scannez-le ici.",
  'Scan its code': 'Scanner son code',
  "1. Scan the code that the panel's phone shows.":
    "1. Scannez le code qu'affiche le téléphone de la centrale.",
  "2. Show this to the panel's phone. Stay on this page until the two have met.":
    "2. Montrez ceci au téléphone de la centrale. Restez sur cette page jusqu'à ce que les deux se soient trouvés.",
  'Without a camera: as text': 'Sans caméra : en texte',
  'Text of this code': 'Texte de ce code',
  Copy: 'Copier',
  Copied: 'Copié',
  'Text of its code': 'Texte de son code',
  'Use this text': 'Utiliser ce texte',
  'Point the camera at the square code of the other phone.':
    "Pointez la caméra sur le code carré de l'autre téléphone.",
  'Stop the camera': 'Arrêter la caméra',
  'Making the code': 'Préparation du code',
  'The phones look for each other.': 'Les téléphones se cherchent.',
  'The two phones have met': 'Les deux téléphones se sont trouvés',
  'The pages of the two phones are of different versions. Open both once where the server answers.':
    'Les pages des deux téléphones ne sont pas de la même version. Ouvrez les deux une fois là où le serveur répond.',
  'This is no code of a meeting. Scan the code that the other phone shows.':
    "Ce n'est pas un code de rencontre. Scannez le code qu'affiche l'autre téléphone.",
  "This is the panel's own code. Scan the one that the other phone shows after it has scanned this one.":
    "C'est le code de la centrale elle-même. Scannez celui que l'autre téléphone affiche après avoir scanné celui-ci.",
  "This is a code of an emitter phone. Scan the one that the panel's phone shows.":
    "C'est le code d'un téléphone à l'émetteur. Scannez celui qu'affiche le téléphone de la centrale.",
  'This code belongs to an earlier meeting. Begin again on both phones.':
    'Ce code appartient à une rencontre précédente. Recommencez sur les deux téléphones.',
  'The two phones do not reach each other. Put both into the same Wi-Fi, or one into the hotspot of the other: a Wi-Fi for guests often keeps phones apart. Then begin again on both.':
    "Les deux téléphones ne se joignent pas. Mettez-les sur le même Wi-Fi, ou l'un sur le partage de connexion de l'autre : un Wi-Fi pour invités sépare souvent les téléphones. Puis recommencez sur les deux.",
  'This browser cannot reach another phone without a server.':
    'Ce navigateur ne peut pas joindre un autre téléphone sans serveur.',
  'Begin the meeting again': 'Recommencer la rencontre',
  "The panel's phone is not reached. What you say is kept. Come back into its Wi-Fi; if no link comes, meet it again.":
    "Le téléphone de la centrale n'est pas joint. Ce que vous dites est gardé. Revenez dans son Wi-Fi ; si aucune liaison ne vient, retrouvez-le.",
  "The panel's phone has brought the record to the server. To go on, join there with a code from the panel: nothing that you said is lost.":
    "Le téléphone de la centrale a apporté l'enregistrement au serveur. Pour continuer, rejoignez-le avec un code de la centrale : rien de ce que vous avez dit n'est perdu.",
  'The record is at the server now': "L'enregistrement est maintenant au serveur",
};

import type { Sentences } from '../translate.ts';

/** How a phone is told to trust the server. */
export const TRUST: Sentences = {
  'The microphone of this phone': 'Le micro de ce téléphone',
  'Browsers give a page the microphone only over https from a server that the phone trusts. Everything else, typing too, works without.':
    "Les navigateurs ne donnent le micro à une page que par https, d'un serveur auquel le téléphone fait confiance. Tout le reste, taper aussi, marche sans.",
  'On this device there is nothing to do. For a phone, open this page at the network address that the server prints.':
    "Sur cet appareil, il n'y a rien à faire. Pour un téléphone, ouvrez cette page à l'adresse réseau que le serveur affiche.",
  'This server gives no https, so the microphone stays off. Type instead. Whoever runs the server can start it without':
    "Ce serveur n'a pas de https, donc le micro reste coupé. Tapez. Qui gère le serveur peut le démarrer sans",
  'Done: this device trusts the server. Allow the microphone when the page asks for it.':
    "C'est fait: cet appareil fait confiance au serveur. Autorisez le micro quand la page le demande.",
  'Open it over https': "L'ouvrir par https",
  'This device does not trust the server yet.': 'Cet appareil ne fait pas encore confiance au serveur.',
  'For a phone: scan this': 'Pour un téléphone: scannez ceci',
  'Square code that opens this page on a phone': 'Code carré qui ouvre cette page sur un téléphone',
  '1. Get the certificate': '1. Obtenir le certificat',
  'Get the certificate': 'Obtenir le certificat',
  'If the browser warns of the download, keep it. The server prints the same number at its start:':
    'Si le navigateur met en garde contre le téléchargement, gardez-le. Le serveur affiche le même numéro au démarrage:',
  '2. Tell the device to trust it': "2. Dire à l'appareil de lui faire confiance",
  'It is good only for addresses of private networks, for names that end in .local, and for this server. Take it away again in the same place.':
    'Il ne vaut que pour des adresses de réseaux privés, pour les noms qui finissent par .local et pour ce serveur. On le retire au même endroit.',
  '3. Open the page over https': '3. Ouvrir la page par https',
  'Check it over https': 'Vérifier par https',
  'There the phone begins anew: join a job that is under way with a new code from the other phone.':
    "Là, le téléphone repart de zéro: rejoignez un travail en cours avec un nouveau code de l'autre téléphone.",
  'iPhone or iPad': 'iPhone ou iPad',
  Android: 'Android',
  Computer: 'Ordinateur',
  'Use Safari for this page. After "Get the certificate", tap Allow.':
    'Utilisez Safari pour cette page. Après "Obtenir le certificat", touchez Autoriser.',
  'Settings, General, VPN & Device Management: tap':
    "Réglages, Général, VPN et gestion de l'appareil: touchez",
  ', then Install.': ', puis Installer.',
  'Settings, General, About, Certificate Trust Settings (at the end): turn on':
    'Réglages, Général, Informations, Réglages de confiance des certificats (à la fin): activez',
  '. Without this second step nothing changes.': '. Sans cette deuxième étape, rien ne change.',
  'Settings: search for "CA certificate". It is under Security, Encryption & credentials, Install a certificate.':
    'Paramètres: cherchez "certificat CA". C\'est sous Sécurité, Chiffrement et identifiants, Installer un certificat.',
  'Tap CA certificate, then Install anyway, and choose ladderline.crt in Downloads. The phone may want a screen lock first.':
    "Touchez Certificat CA, puis Installer quand même, et choisissez ladderline.crt dans Téléchargements. Le téléphone peut d'abord demander un verrouillage d'écran.",
  'Use Chrome. Firefox takes it only after its own setting "Use third party CA certificates".':
    'Utilisez Chrome. Firefox ne le prend qu\'après son propre réglage "Use third party CA certificates".',
  'Windows: open the file, Install Certificate, Current User, and choose "Trusted Root Certification Authorities".':
    'Windows: ouvrez le fichier, Installer un certificat, Utilisateur actuel, et choisissez "Autorités de certification racines de confiance".',
  'Mac: open the file, then in Keychain Access open it again: Trust, Always Trust.':
    "Mac: ouvrez le fichier, puis rouvrez-le dans Trousseaux d'accès: Se fier, Toujours approuver.",
  'Firefox: Settings, Certificates, View Certificates, Authorities, Import.':
    'Firefox: Paramètres, Certificats, Afficher les certificats, Autorités, Importer.',
};

import type { Sentences } from '../translate.ts';

export const PAGES: Sentences = {
  'This link is not complete': "Ce lien n'est pas complet",
  'There is no such page': "Cette page n'existe pas",
  'Part of the address may be missing. A link to join ends in six letters and digits.':
    "Il manque peut-être une partie de l'adresse. Un lien pour rejoindre finit par six lettres et chiffres.",
  'To the start': 'Au début',
  Loading: 'Chargement',
  'This page did not load': "Cette page n'a pas été chargée",
  'The link to the server failed, or the server has a new version. Nothing you entered is lost.':
    "La liaison avec le serveur a échoué, ou le serveur a une nouvelle version. Rien de saisi n'est perdu.",
  'Try again': 'Réessayer',
  'Load the page again': 'Recharger la page',
  'Jobs this phone was in': 'Travaux où ce téléphone était',
  'Read the record': 'Lire le registre',
  'Only the phone that opened the job has the key of its record.':
    'Seul le téléphone qui a ouvert le travail a la clé de son registre.',
  Forget: 'Oublier',
  'Forget: {x}': 'Oublier : {x}',
  'Yes, forget it': "Oui, l'oublier",
  'Yes, forget it: {x}': "Oui, l'oublier : {x}",
  'The record stays on the server. Its key on this phone goes, and cannot be brought back here.':
    'Le registre reste sur le serveur. Sa clé sur ce téléphone disparaît, et ne peut pas revenir ici.',
  'Not accepted': 'Pas accepté',
  'Accepted, not signed': 'Accepté, pas signé',
  Signed: 'Signé',
  '{state}, as last seen here on {x}.': '{state}, vu ici pour la dernière fois le {x}.',
  'A job on this phone': 'Un travail sur ce téléphone',
  'The job continues where it stopped.': "Le travail continue où il s'était arrêté.",
  'The record stays. To come back, this phone needs a new code.':
    'Le registre reste. Pour revenir, il faut un nouveau code.',
  '{n} pair in trouble, as seen here {when}': '{n} paire en difficulté, vue ici {when}',
  '{n} pairs in trouble, as seen here {when}': '{n} paires en difficulté, vues ici {when}',
  '{n} pair': '{n} paire',
  '{n} pairs': '{n} paires',
  'A code has {n} letters and digits, never 0, O, 1, I or L. Check it again.':
    'Un code a {n} lettres et chiffres, jamais 0, O, 1, I ou L. Vérifiez-le.',
  'Joining failed: {why}': 'Impossible de rejoindre: {why}',
  'Waiting for the {seat} phone': 'En attente du téléphone: {seat}',
  "To the site's board": 'Au tableau du site',
  'For a supervisor: watch, read only': 'Pour un responsable: regarder, lecture seule',
  'Link to watch': 'Lien pour regarder',
  'The chart begins with the first turn that was read.': 'Le graphique commence au premier tour lu.',
  'No readings while this adjuster was turned since the last aim by eye.':
    "Pas de valeurs pour cette vis depuis la dernière visée à l'œil.",
  'No readings while this adjuster was turned.': 'Pas de valeurs pendant que cette vis était tournée.',
  '{n} readings from before the last aim by eye are not shown.':
    "{n} valeurs d'avant la dernière visée à l'œil ne sont pas montrées.",
  Passphrase: 'Mot de passe',
  'Of whoever runs this server.': 'De la personne qui gère ce serveur.',
  'Whoever runs this server asks for a passphrase before a site or a job is opened.':
    'Qui gère ce serveur demande un mot de passe pour ouvrir un site ou un travail.',
  'This is not the passphrase. Check it again.': "Ce n'est pas le mot de passe. Vérifiez-le.",
  'You are': 'Vous êtes',
  'Somebody else': "Quelqu'un d'autre",
  "At the desk: open the site's board, then this pair.":
    'Au bureau: ouvrez le tableau du site, puis cette paire.',
  'Write down how it was settled': "Noter comment c'est réglé",
  'The person responsible for this pair reads the record and signs it, with name and role.':
    'La personne responsable de cette paire lit le registre et le signe, avec nom et fonction.',
  'Read the record and sign it': 'Lire le registre et le signer',
  'Square code of the join link': 'Code carré du lien pour rejoindre',
  'This phone is not at the panel': "Ce téléphone n'est pas à la centrale",
  'This phone is not at the emitter': "Ce téléphone n'est pas à l'émetteur",
  'Get a join code from the other phone of the crew, or scan its square code.':
    "Demandez un code à l'autre téléphone de l'équipe, ou scannez son code carré.",
  'Enter a code': 'Entrer un code',
  'The link has ended': 'La liaison est terminée',
  'Connect again': 'Se reconnecter',
  'Open in another window': 'Ouvert dans une autre fenêtre',
  'This seat is open in a newer window or tab of this phone.':
    'Cette place est ouverte dans une fenêtre ou un onglet plus récent de ce téléphone.',
  'Use it here': "L'utiliser ici",
  'Another phone has this seat now': 'Un autre téléphone a cette place maintenant',
  'To come back, ask the other phone of the crew for a new code.':
    "Pour revenir, demandez un nouveau code à l'autre téléphone de l'équipe.",
  'This server does not know the job': 'Ce serveur ne connaît pas le travail',
  'It may have been opened on another server. Open a new job, or ask for a new code.':
    'Il a peut-être été ouvert sur un autre serveur. Ouvrez un nouveau travail, ou demandez un nouveau code.',
  'This page is out of date': "Cette page n'est plus à jour",
  'Nothing that you sent is lost.': "Rien d'envoyé n'est perdu.",
  'The server has less than this phone has seen': 'Le serveur a moins que ce que ce téléphone a vu',
  'Its data may be an older copy. Stop the work and tell the supervisor. To continue from what the server has, load the page again.':
    "Ses données sont peut-être une copie plus ancienne. Arrêtez le travail et prévenez le responsable. Pour continuer avec ce qu'a le serveur, rechargez la page.",
  'Continue with the server': 'Continuer avec le serveur',
  'This browser keeps nothing. Do not close this page, and do not load it again.':
    'Ce navigateur ne garde rien. Ne fermez pas cette page, et ne la rechargez pas.',
  'Emitter phone: {what}': "Téléphone de l'émetteur: {what}",
  'Reading the {what}': 'Lecture: {what}',
  'The {what} could not be read': "N'a pas pu être lu: {what}",
  'the log': 'le registre',
  job: 'travail',
  record: 'registre',
  site: 'site',
  'The pages are not built yet': 'Les pages ne sont pas encore construites',
  'Run "npm run build" on the server, then load this page again.':
    'Lancez "npm run build" sur le serveur, puis rechargez cette page.',
  'There is nothing here': "Il n'y a rien ici",
  'Scan the code again, or begin at the start.': 'Scannez de nouveau le code, ou reprenez au début.',
  'Go to the start': 'Aller au début',
  'This server does not know that name': 'Ce serveur ne connaît pas ce nom',
  'Open it by an address that it printed when it started. If the name in the address bar is right, whoever runs the server can add it with --name.':
    "Ouvrez-le par une adresse qu'il a affichée au démarrage. Si le nom est juste, qui gère le serveur peut l'ajouter avec --name.",
};

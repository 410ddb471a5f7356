import type { Sentences } from '../translate.ts';

/** Links, codes and seats that let nobody in, and requests that failed. */
export const LINKS: Sentences = {
  'This link is not known here.': "Ce lien n'est pas connu ici.",
  'This link does not open a site, or it is not known here.':
    "Ce lien n'ouvre pas de site, ou il n'est pas connu ici.",
  'This link opens a site, not a job.': 'Ce lien ouvre un site, pas un travail.',
  'This link is for watching. It can write remarks with a name, and nothing else.':
    "Ce lien est pour regarder. Il peut écrire des remarques avec un nom, et rien d'autre.",
  'Only who watches puts a name to a remark. The name of a seat is given with "person".':
    'Seul qui regarde met un nom à une remarque. Le nom d\'une place se donne avec "person".',
  'Only the emitter phone says what it has shown.': "Seul le téléphone de l'émetteur dit ce qu'il a montré.",
  'This link is for reading. It cannot change the site.':
    'Ce lien est pour lire. Il ne peut pas changer le site.',
  'A code is six letters and digits.': 'Un code a six lettres et chiffres.',
  'This code is not known, was used before, or has expired. Ask for a new one.':
    "Ce code n'est pas connu, a déjà servi ou a expiré. Demandez-en un nouveau.",
  'Another phone has taken the panel seat.': 'Un autre téléphone a pris la place à la centrale.',
  'Another phone has taken the emitter seat.': "Un autre téléphone a pris la place à l'émetteur.",
  'The panel phone of this job is connected.': 'Le téléphone de la centrale de ce travail est connecté.',
  'The emitter phone of this job is connected.': "Le téléphone de l'émetteur de ce travail est connecté.",
  'Close it there first.': "Fermez-le d'abord là-bas.",
  'This phone opened a newer connection.': 'Ce téléphone a ouvert une liaison plus récente.',
  'The server does not answer. Check that this device is on the site network. Then try again.':
    'Le serveur ne répond pas. Vérifiez que cet appareil est sur le réseau du site. Puis réessayez.',
  'The server has a newer version of this page. Load the page again: what you typed stays.':
    'Le serveur a une version plus récente de cette page. Rechargez la page: ce que vous avez tapé reste.',
  "This page cannot read the server's answer. Load the page again.":
    'Cette page ne peut pas lire la réponse du serveur. Rechargez la page.',
  "This page cannot read the server's answer ({n}). Load the page again.":
    'Cette page ne peut pas lire la réponse du serveur ({n}). Rechargez la page.',
  'The request failed: {x}': 'La demande a échoué: {x}',
  'There is no such visit on this site.': "Cette visite n'existe pas sur ce site.",
  'The link to the server is lost.': 'La liaison avec le serveur est perdue.',
  "The server's log of this job is not the one that this phone has seen.":
    "Le registre de ce travail sur le serveur n'est pas celui que ce téléphone a vu.",
  'This page is too old for the server. Load it again.':
    'Cette page est trop vieille pour le serveur. Rechargez-la.',
  'This page is newer than the server.': 'Cette page est plus récente que le serveur.',
  'This request comes from a page of another website.': "Cette demande vient d'une page d'un autre site web.",
  'This is practice on a simulated pair: there is no record to print or to save.':
    "C'est un exercice sur une paire simulée: il n'y a pas de registre à imprimer ni à enregistrer.",
  'There is no such report. Start it again.': "Ce rapport n'existe pas. Relancez-le.",
  'The speech model has no such file.': "Le modèle vocal n'a pas ce fichier.",
  'it holds a character that nobody sees ({x}). Type it again.':
    'il contient un caractère que personne ne voit ({x}). Tapez-le de nouveau.',
  'The server is stopping. Nothing is lost: try again in a minute.':
    "Le serveur s'arrête. Rien n'est perdu: réessayez dans une minute.",
  'The server is stopping. Keep your phone open: it goes on by itself.':
    "Le serveur s'arrête. Laissez votre téléphone ouvert: cela reprend tout seul.",
  'The link needs a long key after the': "Le lien a besoin d'une longue clé après le",
  '. Ask the person who sent it to send all of it again. A site that this device knows also opens from the start page.':
    ". Demandez à la personne qui l'a envoyé de le renvoyer en entier. Un site que cet appareil connaît s'ouvre aussi depuis la page de départ.",
  'Another phone has taken the {seat} seat.': 'Un autre téléphone a pris la place: {seat}.',
};

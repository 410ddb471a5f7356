import type { Sentences } from '../translate.ts';

export const ADMISSION: Sentences = {
  'No code? Ask the panel': 'Pas de code ? Demander à la centrale',
  'Ask the panel': 'Demander à la centrale',
  'Job word': 'Mot du travail',
  'The panel phone shows it below its code. The person there then says yes or no.':
    "Le téléphone de la centrale l'affiche sous son code. La personne là-bas dit ensuite oui ou non.",
  Asking: 'Demande en cours',
  'Ask to come in': 'Demander à entrer',
  'I have a code': "J'ai un code",
  'The panel is asked': 'La centrale est interrogée',
  'The panel phone shows the same word and number. Tell the person there what you see.':
    'Le téléphone de la centrale affiche le même mot et le même nombre. Dites à la personne là-bas ce que vous voyez.',
  'No link to the server. This page goes on trying.':
    'Pas de liaison avec le serveur. Cette page continue d’essayer.',
  'Waiting for yes or no. Keep this page open.':
    'En attente d’un oui ou d’un non. Laissez cette page ouverte.',
  'The panel said no. Ask only if this is the emitter phone of that job: call the person at the panel.':
    "La centrale a dit non. Ne demandez que si c'est le téléphone de l'émetteur de ce travail : appelez la personne à la centrale.",
  'Nobody at the panel answered in time. Call the person there, then ask again.':
    "Personne à la centrale n'a répondu à temps. Appelez la personne là-bas, puis demandez encore.",
  'Is this your emitter?': 'Est-ce votre émetteur ?',
  "Yes only if your colleague's phone shows the same word and number.":
    'Oui seulement si le téléphone de votre collègue affiche le même mot et le même nombre.',
  'The phone that was at the emitter before loses its seat.':
    "Le téléphone qui était avant à l'émetteur perd sa place.",
  'Yes, let it in': 'Oui, laisser entrer',
  'Without the code: the other phone asks the panel, with the job word':
    'Sans le code : l’autre téléphone demande à la centrale, avec le mot du travail',
  'A job word is a word of the radio and three figures, as in KILO 417.':
    'Le mot du travail est un mot de la radio et trois chiffres, comme KILO 417.',
  'The panel let a phone in that showed {x}': 'La centrale a laissé entrer un téléphone qui affichait {x}',
  'The panel turned a phone away that showed {x}': 'La centrale a refusé un téléphone qui affichait {x}',
  'No panel shows this word now. Check it with the person at the panel: it changes when the server starts again.':
    "Aucune centrale n'affiche ce mot maintenant. Vérifiez-le avec la personne à la centrale : il change quand le serveur redémarre.",
  'The panel phone of this job is not connected, so nobody can answer. Ask again when it is back.':
    "Le téléphone de la centrale de ce travail n'est pas connecté : personne ne peut répondre. Demandez encore quand il sera de retour.",
  'Another phone asks at this moment. Wait until the panel has answered it, then ask again.':
    'Un autre téléphone demande en ce moment. Attendez que la centrale lui ait répondu, puis demandez encore.',
  'Three questions in a row were not answered with yes, so the panel gets none for a quarter of an hour. Scan its square code, or type its code.':
    "Trois demandes de suite n'ont pas reçu de oui : la centrale n'en reçoit plus pendant un quart d'heure. Scannez son code carré, ou tapez son code.",
  'Too many questions came from here. Wait some minutes, or scan the square code at the panel.':
    "Trop de demandes sont venues d'ici. Attendez quelques minutes, ou scannez le code carré à la centrale.",
  'The record of this job is signed, so nobody is let in by asking. The panel can still give a code.':
    "Le rapport de ce travail est signé : personne n'entre en demandant. La centrale peut encore donner un code.",
  'That phone asks no longer. If it is yours, let it ask again.':
    "Ce téléphone ne demande plus. Si c'est le vôtre, qu'il demande encore.",
  'Only the panel phone answers who may come in.': 'Seul le téléphone de la centrale répond qui peut entrer.',
  'The server does not know this question any more. Ask again.':
    'Le serveur ne connaît plus cette demande. Demandez encore.',
  'yes, let it in': 'oui, laisser entrer',
  'no, not our phone': 'non, pas notre téléphone',
  'Asking failed: {why}': 'La demande a échoué : {why}',
};

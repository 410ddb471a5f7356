import type { Sentences } from '../translate.ts';

export const MENU: Sentences = {
  'This job': 'Ce travail',
  'Stop the job': 'Arrêter le travail',
  'At this phone': 'À ce téléphone',
  '(name forgotten)': '(nom oublié)',
  'not named': 'sans nom',
  'Give a name': 'Donner un nom',
  'Somebody else is here now': "Quelqu'un d'autre est ici maintenant",
  'Keep for the record': 'Garder pour le registre',
  'Remark for the record': 'Remarque pour le registre',
  'Keep the remark': 'Garder la remarque',
  Screen: 'Écran',
  'As the phone is set': 'Comme le téléphone est réglé',
  'In the sun': 'Au soleil',
  'At night': 'La nuit',
  '{theme}: chosen': '{theme}: choisi',
  'Voice of this phone': 'Voix de ce téléphone',
  'Voice is on. Turn it off': 'La voix est activée. La couper',
  'Voice is off. Turn it on': "La voix est coupée. L'activer",
  'Vibration is on. Turn it off': 'La vibration est activée. La couper',
  'Vibration is off. Turn it on': "La vibration est coupée. L'activer",
  Pace: 'Débit',
  Loudness: 'Volume',
  'Try the voice': 'Essayer la voix',
  'This is how I speak.': 'Voilà comment je parle.',
  'Without a link': 'Sans liaison',
  'Another phone takes over': 'Un autre téléphone prend le relais',
  'This phone keeps the pages: they open without a link.':
    "Ce téléphone garde les pages: elles s'ouvrent sans liaison.",
  'What you press or type is kept. It is sent when the link is back.':
    "Ce que vous pressez ou tapez est gardé. C'est envoyé au retour de la liaison.",
  '1 thing that you said or pressed is kept here. It is sent when the link is back.':
    '1 chose que vous avez dite ou pressée est gardée ici. Elle est envoyée au retour de la liaison.',
  '{n} things that you said or pressed are kept here. It is sent when the link is back.':
    '{n} choses que vous avez dites ou pressées sont gardées ici. Elles sont envoyées au retour de la liaison.',
  'This is the job as this phone last saw it. The other phone may have gone on since.':
    "Voici le travail tel que ce téléphone l'a vu en dernier. L'autre téléphone a pu continuer depuis.",
  'The record stays on the server. To come back, this phone needs a new code.':
    "Le registre reste sur le serveur. Pour revenir, ce téléphone a besoin d'un nouveau code.",
  'From now on the sound of what you say is kept with this record for {n} days. Both of you can turn it off in the menu.':
    "À partir de maintenant, le son de ce que vous dites est gardé avec ce dossier pendant {n} jours. Vous pouvez tous deux l'arrêter dans le menu.",
  'The sound of what you say is no longer kept. What was kept before is deleted when its days are over.':
    "Le son de ce que vous dites n'est plus gardé. Ce qui a été gardé avant est effacé quand ses jours sont passés.",
  'Your voice': 'Votre voix',
  'If you are heard wrong: read ten digits in English, with a short pause after each. It takes fifteen seconds. Where they are heard badly, you are asked more often instead.':
    "Si on vous entend mal : lisez dix chiffres en anglais, avec une courte pause après chacun. Cela prend quinze secondes. S'ils sont mal entendus, on vous demande plus souvent.",
  'Nothing of your voice is stored. What was learnt of it is gone when this page is closed.':
    "Rien de votre voix n'est stocké. Ce qui en a été appris disparaît quand cette page est fermée.",
  'Read ten digits': 'Lire dix chiffres',
  'I have read them': 'Je les ai lus',
  'Listening to the ten digits': 'Écoute des dix chiffres',
  'These were not heard as ten digits. Read them again in this order, with a short pause after each, or go on without.':
    "Ce n'a pas été entendu comme dix chiffres. Relisez-les dans cet ordre, avec une courte pause après chacun, ou continuez sans.",
  'Your digits were heard well. Nothing changes.': 'Vos chiffres ont été bien entendus. Rien ne change.',
  'Some of your digits were heard badly. Until this page is closed you are asked more often.':
    "Certains de vos chiffres ont été mal entendus. Jusqu'à la fermeture de cette page, on vous demande plus souvent.",
  'Forget my voice': 'Oublier ma voix',
  'Sound of what is said': 'Son de ce qui est dit',
  'Not kept: the server listens, writes down the words, and forgets the sound.':
    'Pas gardé : le serveur écoute, écrit les mots et oublie le son.',
  'Kept with the record for {n} days, so that a supervisor can listen to a reading that is doubted.':
    "Gardé avec le dossier pendant {n} jours, pour qu'un responsable puisse écouter une lecture mise en doute.",
  'Keep the sound for {n} days': 'Garder le son {n} jours',
  'Do not keep the sound': 'Ne pas garder le son',
  'What a phone hears by itself, without the server, is never kept.':
    "Ce qu'un téléphone entend seul, sans le serveur, n'est jamais gardé.",
  Listen: 'Écouter',
  'Practice keeps nothing, and no sound.': "L'exercice ne garde rien, et pas de son.",
  'From now on the sound of what you say is kept with this record for one day. Both of you can turn it off in the menu.':
    "À partir de maintenant, le son de ce que vous dites est gardé un jour avec ce procès-verbal. Vous pouvez tous les deux l'arrêter dans le menu.",
  'Listen to: {x}': 'Écouter : {x}',
  'There is no sound with this entry.': "Il n'y a pas de son avec cette entrée.",
  'The sound is deleted: its days are over.': 'Le son est effacé : ses jours sont passés.',
  'The sound is not on the server, or is not the one that was kept.':
    "Le son n'est pas sur le serveur, ou n'est pas celui qui a été gardé.",
  '{x}, percent filter on': '{x}, pour cent, filtre en place',
  'yes, let it in': 'oui, le laisser entrer',
  'no, not our phone': 'non, pas notre téléphone',
  'a new join code': 'un nouveau code pour rejoindre',
  'take back entry {n}': "retirer l'entrée {n}",
};

import type { Sentences } from '../translate.ts';

export const ALONE: Sentences = {
  'I am alone': 'Je suis seul',
  'You do both: with a second phone by the panel, by walking to it, or by an indicator that you see from the ladder.':
    "Vous faites les deux : avec un second téléphone à la centrale, en y allant, ou par un indicateur que vous voyez de l'échelle.",
  'One person alone': 'Une personne seule',
  'Where the rules of the site or the maker ask for two people, this is not allowed. Ask before you begin.':
    "Là où les règles du site ou du fabricant demandent deux personnes, ce n'est pas permis. Demandez avant de commencer.",
  'What you need': "Ce qu'il faut",
  'How it goes': 'Comment cela se passe',
  'What its evidence is worth': 'Ce que vaut la preuve',
  'A second phone watches the meter': "Un second téléphone surveille l'appareil",
  'Two phones, and something to prop one of them before the display. The display shows a number.':
    "Deux téléphones, et de quoi caler l'un d'eux devant l'afficheur. L'afficheur montre un nombre.",
  'At the panel: open the job on the phone that stays there.':
    'À la centrale : ouvrez le travail sur le téléphone qui y reste.',
  'Scan its square code with the phone that you carry.':
    'Scannez son code carré avec le téléphone que vous portez.',
  'Prop the first phone, draw the box round the number, and say once that it reads it right.':
    "Calez le premier téléphone, tracez le cadre autour du nombre et confirmez une fois qu'il lit juste.",
  'Climb. From here on nobody touches the propped phone. The phone that you carry speaks each order.':
    "Montez. À partir d'ici personne ne touche le téléphone calé. Le téléphone que vous portez dit chaque consigne.",
  'The same as with two people: every number was on the display when it was taken. The record names the camera beside each, and how sure it was.':
    "La même qu'à deux : chaque nombre était sur l'afficheur quand il a été pris. Le compte rendu nomme la caméra à côté de chacun, et à quel point elle était sûre.",
  'Begin with two phones': 'Commencer avec deux téléphones',
  'You walk to the meter': "Vous allez à l'appareil",
  'This phone only. A way between ladder and meter that you can walk about {n} times. The gain is set beside the meter.':
    "Ce téléphone seulement. Un chemin entre l'échelle et l'appareil à parcourir environ {n} fois. Le gain se règle à côté de l'appareil.",
  'Begin at the meter: read it first.': "Commencez à l'appareil : lisez-le d'abord.",
  'Do what it says at the emitter, turn by turn, and say "done" each time.':
    "Faites à l'émetteur ce qu'il dit, tour par tour, et dites « fait » chaque fois.",
  'Go to the meter. Say or type the number.': "Allez à l'appareil. Dites ou tapez le nombre.",
  'Before each trip it tells you its plan: how many turns, and when the card goes up. It keeps the count.':
    'Avant chaque trajet il vous dit le plan : combien de tours, et quand mettre la carte. Il tient le compte.',
  'Both sides of each peak, the blocking check, and a number that holds, with fewer places read than with two people: the number at the peak must be what the others foretold. What the meter did while you were away from it, nobody saw.':
    "Les deux côtés de chaque maximum, l'essai de masquage et un nombre qui tient, avec moins d'endroits lus qu'à deux : le nombre au maximum doit être celui que les autres annonçaient. Ce que l'appareil a fait en votre absence, personne ne l'a vu.",
  'Begin with one phone': 'Commencer avec un téléphone',
  'Alone: tell somebody where you work, and when they will hear from you.':
    "Seul : dites à quelqu'un où vous travaillez et quand vous donnerez des nouvelles.",
  'Nobody holds the ladder: tie it or foot it. Close the ground below it.':
    "Personne ne tient l'échelle : attachez-la ou calez-la. Fermez le sol en dessous.",
  'One person alone: {way}.': 'Une personne seule : {way}.',
  'a second phone read the meter by its camera': "un second téléphone a lu l'appareil avec sa caméra",
  'the same person walked to the meter for each number':
    "la même personne est allée à l'appareil pour chaque nombre",
  'Stay at the meter. Read it again.': "Restez à l'appareil. Lisez encore une fois.",
  'Stay: read the meter again': 'Restez : lisez encore',
  'Go to the meter. Say what it shows.': "Allez à l'appareil. Dites ce qu'il montre.",
  'Go and read the meter': "Allez lire l'appareil",
  'Hands off. Now go to the meter.': "Ne touchez plus. Allez à l'appareil.",
  'Hands off: go to the meter': "Ne touchez plus : allez à l'appareil",
  'Stay at the meter. Proving that it holds.': "Restez à l'appareil. On vérifie que cela tient.",
  'Stay: proving steady': 'Restez : vérification',
  'Talk hands-free from the start: on': 'Parler mains libres dès le début : oui',
  'Talk hands-free from the start: off': 'Parler mains libres dès le début : non',
  'If nothing is heard from you': "Si l'on n'entend rien de vous",
  'The phone asks whether you are still there, then asks louder, then shows what you agreed with somebody. It cannot call by itself, and nobody is told unless a finger presses its key: it is no rescue.':
    "Le téléphone demande si vous êtes toujours là, puis demande plus fort, puis montre ce que vous avez convenu avec quelqu'un. Il ne peut pas appeler seul, et personne n'est prévenu si un doigt n'appuie pas sur sa touche : ce n'est pas un secours.",
  'Ask after so many minutes of silence': 'Demander après tant de minutes de silence',
  'What was agreed: who to call, and where you are': 'Ce qui est convenu : qui appeler, et où vous êtes',
  'It is shown large on this phone, to whoever finds it.':
    'Affiché en grand sur ce téléphone, pour qui le trouve.',
  'Number to call or text': 'Numéro à appeler ou à qui écrire',
  'Without a number of minutes it does not ask.': 'Sans minutes, il ne demande pas.',
  'Kept on this phone.': 'Gardé sur ce téléphone.',
  'Still there? Say yes.': 'Toujours là ? Dites « oui ».',
  'Are you well? Say yes, or touch the phone.': 'Ça va ? Dites « oui », ou touchez le téléphone.',
  'Nobody answers. Please look for the person on the ladder.':
    "Personne ne répond. Cherchez la personne sur l'échelle, s'il vous plaît.",
  'I am here': 'Je suis là',
  'Call {x}': 'Appeler le {x}',
  'Send a text': 'Envoyer un message',
  'Send by another app': 'Envoyer avec une autre application',
  'Between {n1} and {n2} minutes, or leave it empty.': 'Entre {n1} et {n2} minutes, ou laissez vide.',
  'Trip {n}: {n1} turns, then the card, then the meter.':
    "Trajet {n} : {n1} tours, puis la carte, puis l'appareil.",
  'Trip {n}: this turn, then the card, then the meter.':
    "Trajet {n} : ce tour, puis la carte, puis l'appareil.",
  'Trip {n}: {n1} turns, then the meter.': "Trajet {n} : {n1} tours, puis l'appareil.",
  'Then go to the meter: trip {n}.': "Allez ensuite à l'appareil : trajet {n}.",
  'Nothing was heard for {n} minutes from the person working alone at {x}.':
    "Depuis {n} minutes on n'entend rien de la personne qui travaille seule : {x}.",
  'Nothing was heard for {n} minutes from the person on the ladder at {x}.':
    "Rien n'a été entendu pendant {n} minutes de la personne sur l'échelle à {x}.",
  'Still there? Nobody at the emitter answered for {n} minutes. Go and look.':
    "Toujours là ? Personne à l'émetteur n'a répondu pendant {n} minutes. Allez voir.",
  'Still there? The emitter answered again.': "Toujours là ? L'émetteur a répondu de nouveau.",
  'If nothing is heard from me': "Si l'on n'entend rien de moi",
  'Check of the person alone: nobody answered for {n} minutes.':
    'Contrôle de la personne seule : personne ne répond depuis {n} minutes.',
  'Check of the person alone: answered again.': 'Contrôle de la personne seule : elle a répondu de nouveau.',
};

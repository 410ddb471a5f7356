import type { Sentences } from '../translate.ts';

export const PRACTICE: Sentences = {
  Practice: 'Exercice',
  'a simulated pair': 'une paire simulée',
  Practise: "S'exercer",
  'The screens are the real ones. The beam, the meter and the screws are drawn, and nothing is a record. It works without a link.':
    "Les écrans sont les vrais. Le faisceau, l'appareil et les vis sont dessinés, et rien n'est un registre. Cela marche sans liaison.",
  'First time: five steps, about a minute': 'Première fois: cinq étapes, environ une minute',
  'At the panel: read the meter': "À la centrale: lire l'appareil",
  'At the emitter: turn the screws': "À l'émetteur: tourner les vis",
  'Start at the panel': 'Commencer à la centrale',
  'Start at the emitter': "Commencer à l'émetteur",
  'With trouble': 'Avec des ennuis',
  'What shall go wrong?': "Qu'est-ce qui doit mal se passer?",
  'Surprise me': 'Surprise',
  'On two phones': 'Sur deux téléphones',
  'This phone is at the panel and shows the drawn meter. The other one joins with a code and turns the drawn screws. For this you need the link.':
    "Ce téléphone est à la centrale et montre l'appareil dessiné. L'autre rejoint avec un code et tourne les vis dessinées. Il faut pour cela la liaison.",
  'Start on two phones': 'Commencer sur deux téléphones',
  'This phone then leaves the job it is in.': 'Ce téléphone quitte alors son travail en cours.',
  'This phone then leaves {x}.': 'Ce téléphone quitte alors {x}.',
  'the job it is in': 'son travail en cours',
  'Practice could not be opened: {why}': "L'exercice n'a pas pu être ouvert: {why}",
  'Too much light': 'Trop de lumière',
  'The meter stands at its end. That number means nothing: say "saturated".':
    "L'appareil est au bout. Ce nombre ne veut rien dire: dites «saturé».",
  'A turn that goes the wrong way': 'Un tour dans le mauvais sens',
  'Once, a screw goes the other way than meant. Look at it before you say "done"; say "wrong way" if it was.':
    "Une fois, une vis part dans l'autre sens. Regardez avant de dire «fait»; dites «mauvais sens» si c'est le cas.",
  'A wall that reflects': 'Un mur qui réfléchit',
  'The light first comes from a wall. The card in the direct line shows it: the meter does not go to nothing.':
    "La lumière vient d'abord d'un mur. Le carton dans la ligne directe le montre: l'appareil ne tombe pas à rien.",
  'A shaking mount': 'Une fixation qui tremble',
  'The meter never stands still. Say a number from the middle of what you see.':
    "L'appareil ne s'arrête jamais. Dites un nombre au milieu de ce que vous voyez.",
  'A number heard wrong': 'Un nombre mal entendu',
  'Once, a number from the panel is heard as another. Listen to the read-back, and correct it.':
    'Une fois, un nombre de la centrale est entendu comme un autre. Écoutez la relecture, et corrigez.',
  'Read the drawn meter. Type its number, then tap Send.':
    "Lisez l'appareil dessiné. Tapez son nombre, puis touchez Envoyer.",
  'Your colleague turns a screw. Watch the meter move, and wait.':
    "Votre collègue tourne une vis. Regardez l'appareil bouger, et attendez.",
  'When the order says "read", send the new number.':
    'Quand la consigne dit de lire, envoyez le nouveau nombre.',
  'A wrong number sent? Try it: tap Correct, and give the number of the meter.':
    "Un mauvais nombre envoyé? Essayez: touchez Corriger, et donnez le nombre de l'appareil.",
  'You need time? Tap Wait, then Go on.': 'Besoin de temps? Touchez Attendre, puis Continuer.',
  'The large words are your order. Turn the drawn screw as they say.':
    'Les grands mots sont votre consigne. Tournez la vis dessinée comme ils le disent.',
  'It is turned? Tap Done.': "C'est tourné? Touchez Fait.",
  'Hands off. Your colleague reads the meter, and you hear what changed.':
    "Ne touchez à rien. Votre collègue lit l'appareil, et vous entendez ce qui a changé.",
  'Nothing to do for you yet. Wait for your order.':
    "Rien à faire pour vous pour l'instant. Attendez votre ordre.",
  'Not heard? Tap Say again.': 'Pas entendu? Touchez Répéter.',
  'You need both hands? Tap Wait, then Go on.': 'Besoin des deux mains? Touchez Attendre, puis Continuer.',
  '{n} of {n1}: {lesson}': '{n} sur {n1}: {lesson}',
  'That is all you need. Go on until "accept", or end here.':
    "C'est tout ce qu'il faut. Continuez jusqu'à «accepter», ou finissez ici.",
  'Your colleague calls out': 'Votre collègue annonce',
  '{axis}: not turned': '{axis}: pas tourné',
  '{axis}: {glyph} clockwise': '{axis}: {glyph} sens horaire',
  '{axis}: {glyph} anticlockwise': '{axis}: {glyph} sens antihoraire',
  'Turn the horizontal screw {amount} {sense}': 'Tourner la vis horizontale: {amount} {sense}',
  'Turn the vertical screw {amount} {sense}': 'Tourner la vis verticale: {amount} {sense}',
  'Practice on one phone: nobody else joins it.': "Exercice sur un téléphone: personne d'autre ne rejoint.",
  'The same pair is now played with a simulated crew that does what it is asked.':
    "La même paire est maintenant jouée par une équipe simulée qui fait ce qu'on lui demande.",
  'Ended before it was accepted': "Fini avant d'être accepté",
  'Well done': 'Bien fait',
  'Accepted, but look': 'Accepté, mais voyez',
  'Nothing was missed.': "Rien n'a été manqué.",
  'It was accepted without its proof.': 'Accepté sans sa preuve.',
  'It was accepted on the light of a wall. On a real pair, smoke in the beam would bring no alarm.':
    "Accepté sur la lumière d'un mur. Sur une vraie paire, de la fumée dans le faisceau ne donnerait pas d'alarme.",
  'It was accepted beside the peak: a little dirt, and it loses its signal.':
    'Accepté à côté du maximum: un peu de saleté, et le signal se perd.',
  'A number was said while the meter was at its end.':
    "Un nombre a été dit alors que l'appareil était au bout.",
  'A number that the meter did not show was not put right.':
    "Un nombre que l'appareil n'affichait pas n'a pas été corrigé.",
  'A screw was not turned as reported, and it was not put right.':
    "Une vis n'a pas été tournée comme annoncé, et cela n'a pas été corrigé.",
  '"Blocked" was said without a card in the beam. A wall would not have been found.':
    "«Masqué» a été dit sans carton dans le faisceau. Un mur n'aurait pas été trouvé.",
  '"Clear" was said while the card was in the beam.': '«Dégagé» a été dit avec le carton dans le faisceau.',
  '"Aimed" was said without aiming.': 'La visée a été annoncée sans viser.',
  mastered: 'réussi',
  missed: 'manqué',
  'did not come up': "n'est pas arrivé",
  Turns: 'Tours',
  Readings: 'Valeurs',
  Time: 'Temps',
  'Words and taps': 'Mots et touches',
  'Wrong numbers': 'Mauvais nombres',
  '{n}, put right: {n1}': '{n}, corrigés: {n1}',
  'Below the best': 'Sous le meilleur',
  You: 'Vous',
  Crew: 'Équipe',
  'Crew: a simulated one on the same pair. It obeys, and looks again only when asked; 6 s a turn, 2 s a reading (our estimate).':
    'Équipe: une équipe simulée sur la même paire. Elle obéit, et ne regarde de nouveau que sur demande; 6 s par tour, 2 s par valeur (notre estimation).',
  'The crew had not got there when its time was up.':
    "L'équipe n'avait pas fini quand son temps s'est écoulé.",
  'The same again': 'La même encore',
  'Practise something else': "S'exercer à autre chose",
  'Practice: nothing here is a record': "Exercice: rien ici n'est un registre",
  'End, and see how it went': 'Finir, et voir le résultat',
  'Leave practice': "Quitter l'exercice",
  'Practice: the hand turned {turn}': 'Exercice: la main a tourné {turn}',
  'Practice: the hand set the gain {n} dB below full':
    'Exercice: la main a mis le gain {n} dB sous le maximum',
  'Practice: the card was held into the beam': 'Exercice: le carton a été mis dans le faisceau',
  'Practice: the card was taken out': 'Exercice: le carton a été retiré',
  'Practice: aimed by eye': "Exercice: visé à l'œil",
  'Drawn screws': 'Vis dessinées',
  'Drawn emitter': 'Émetteur dessiné',
  'It points at the receiver now.': 'Il vise le récepteur maintenant.',
  'It points past the receiver.': 'Il vise à côté du récepteur.',
  'Aim at the receiver': 'Viser le récepteur',
  'Drawn card': 'Carton dessiné',
  'The card is in the beam.': 'Le carton est dans le faisceau.',
  'The card is out of the beam.': 'Le carton est hors du faisceau.',
  'Take the card out': 'Retirer le carton',
  'Hold the card in': 'Mettre le carton',
  'Drawn gain': 'Gain dessiné',
  'Gain: full': 'Gain: maximum',
  'Gain: {n} dB below full': 'Gain: {n} dB sous le maximum',
  'Drawn meter': 'Appareil dessiné',
  'What to do': 'Que faire',
  'A drawn beam, with trouble if you like. Alone on this phone, or on two.':
    'Un faisceau dessiné, avec des ennuis si vous voulez. Seul sur ce téléphone, ou sur deux.',
  'Your colleague aims the emitter. Watch the meter move, and wait.':
    "Votre collègue vise avec l'émetteur. Regardez l'appareil bouger, et attendez.",
  'The large words are your order. Aim the drawn emitter, then tap Aimed.':
    "Les grands mots sont votre consigne. Visez avec l'émetteur dessiné, puis touchez Visé.",
  'Now turn the drawn screw as the large words say.':
    'Maintenant tournez la vis dessinée comme le disent les grands mots.',
};

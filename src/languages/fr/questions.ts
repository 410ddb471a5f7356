import type { Sentences } from '../translate.ts';

export const QUESTIONS: Sentences = {
  'Did the meter show {value}?': "L'appareil affichait-il {value}?",
  '{value}?': '{value}?',
  '{a}, or {b}? Say which.': '{a} ou {b}? Dites lequel.',
  '{a} or {b}?': '{a} ou {b}?',
  '{a}, or {b}? Say it figure by figure.': '{a} ou {b}? Dites-le chiffre par chiffre.',
  'Did you turn: {a}, or {b}?': 'Avez-vous tourné: {a}, ou {b}?',
  'Did you turn: {a}?': 'Avez-vous tourné: {a}?',
  '{n} turns ago, did you turn: {a}?': 'Il y a {n} tours de vis, avez-vous tourné: {a}?',
  '{n} turns ago: turned {a}?': 'Il y a {n} tours de vis: tourné {a}?',
  'Turned {a}, or {b}?': 'Tourné {a}, ou {b}?',
  'Turned {a}?': 'Tourné {a}?',
  'Did you say: {a}?': 'Avez-vous dit: {a}?',
  'Is the beam path clear? Say yes or no.': 'Le trajet du faisceau est-il dégagé? Dites «oui» ou «non».',
  'Path clear?': 'Trajet dégagé?',
  'Is the gain untouched? Say yes or no.': 'Le gain est-il inchangé? Dites «oui» ou «non».',
  'Gain untouched?': 'Gain inchangé?',
  'Reading right? Say yes, or say it again.': 'La valeur est-elle juste? Dites «oui», ou redites-la.',
  'Reading right?': 'Valeur juste?',
  'Say again, please.': "Répétez, s'il vous plaît.",
  'I did not understand "{x}". Try other words, or type.':
    "Je n'ai pas compris «{x}». Essayez d'autres mots, ou tapez.",
  '{question} Or type it, or say "not sure".': '{question} Ou tapez, ou dites «pas sûr».',
  '{list} Or say "stop", and note it.': '{list} Ou dites «stop», et notez-le.',
  '{question} Or say "wait", look again, then "go on".':
    '{question} Ou dites «attendre», regardez encore, puis «continuer».',
  'Then say the reading again.': 'Alors redites la valeur.',
  'Something was turned since then. What does the meter show now?':
    "Depuis, quelque chose a été tourné. Qu'affiche l'appareil maintenant?",
  'There is no such reading. What does the meter show?': "Cette valeur n'existe pas. Qu'affiche l'appareil?",
  'What is wrong? Say "wrong" and the right reading, or "undo".':
    "Qu'est-ce qui est faux? Dites «correction» et la bonne valeur, ou «annuler».",
  'What is not sure? Say what was turned, or "say again".':
    "De quoi n'êtes-vous pas sûr? Dites ce qui a été tourné, ou «répéter».",
  'Then look first. Say yes or no.': "Alors regardez d'abord. Dites «oui» ou «non».",
  'A number is needed: the one on the meter at the panel. Or say no signal, or saturated.':
    "Il faut un nombre: celui de l'appareil à la centrale. Ou dites «pas de signal» ou «saturé».",
  'Nothing was asked. What can you not do?': "Rien n'a été demandé. Que ne pouvez-vous pas faire?",
  'No turn was made yet. What went the wrong way?':
    "Rien n'a encore été tourné. Qu'est-ce qui est allé dans le mauvais sens?",
  'There is nothing to take back.': "Il n'y a rien à annuler.",
  'Which adjuster was turned: horizontal or vertical?':
    'Quelle vis a été tournée: «horizontale» ou «verticale»?',
  'How far was it turned? Say the adjuster, how far and which way: horizontal, half a turn clockwise.':
    'De combien a-t-on tourné? Dites la vis, de combien et le sens: «horizontale, un demi-tour dans le sens horaire».',
  'How far did you turn the horizontal?': "De combien avez-vous tourné l'horizontale?",
  'How far did you turn the vertical?': 'De combien avez-vous tourné la verticale?',
  'Which way did you turn the horizontal: clockwise or anticlockwise?':
    "Dans quel sens avez-vous tourné l'horizontale: «horaire» ou «antihoraire»?",
  'Which way did you turn the vertical: clockwise or anticlockwise?':
    'Dans quel sens avez-vous tourné la verticale: «horaire» ou «antihoraire»?',
  'Heard {n}, but this meter shows steps of {n1}. What does it show?':
    "Entendu {n}, mais cet appareil va par pas de {n1}. Qu'affiche-t-il?",
  'This meter shows {unit}. What does it show?': "Cet appareil affiche des {unit}. Qu'affiche-t-il?",
  'Heard {n}, but this meter only shows {n1} to {n2}. What does it show?':
    "Entendu {n}, mais cet appareil n'affiche que de {n1} à {n2}. Qu'affiche-t-il?",
  'Who was told? For example, say: told the control room.':
    'Qui a été prévenu? Dites par exemple: «salle de contrôle prévenue».',
  'Is that right? Say yes or no.': 'Est-ce exact? Dites «oui» ou «non».',
  'Half of it, or all? This test needs half. Say half covered when it is.':
    "La moitié, ou tout? Cet essai demande la moitié. Dites «à moitié masqué» quand c'est le cas.",
  'Is the filter on? Say filter on when it is.':
    'Le filtre est-il en place? Dites «filtre en place» quand il y est.',
};

import type { Sentences } from '../translate.ts';

export const PROVING: Sentences = {
  'Fault test: cover the whole receiver at once, with something dull. Say covered at that moment.':
    "Essai de dérangement: masquez tout le récepteur d'un coup, avec quelque chose de mat. Dites «masqué» à ce moment.",
  'Cover all of the receiver at once': "Masquer tout le récepteur d'un coup",
  'Alarm test: slide a dull card over half of the receiver, slowly, in more than two seconds. Half a cover is coarse: be exact. Say half covered when it is there.':
    "Essai d'alarme: glissez un carton mat sur la moitié du récepteur, lentement, en plus de deux secondes. Un demi-cache est grossier: soyez exact. Dites «à moitié masqué» quand il y est.",
  'Cover half of the receiver, slowly': 'Masquer la moitié du récepteur, lentement',
  '{test}: bring the {n} percent test filter before the receiver, slowly, in more than two seconds. Say {n1} percent filter on when it is there.':
    "{test}: amenez le filtre d'essai de {n} pour cent devant le récepteur, lentement, en plus de deux secondes. Dites «filtre de {n1} pour cent en place» quand il y est.",
  '{test}: bring the test filter before the receiver, slowly, in more than two seconds. Say filter on when it is there.':
    "{test}: amenez le filtre d'essai devant le récepteur, lentement, en plus de deux secondes. Dites «filtre en place» quand il y est.",
  'No alarm must come. Quiet test': 'Aucune alarme ne doit venir. Essai de silence',
  'This filter is so strong that a fault may come: only an alarm counts. Alarm test':
    "Ce filtre est si fort qu'un dérangement peut venir: seule une alarme compte. Essai d'alarme",
  'Alarm test': "Essai d'alarme",
  'Quiet test': 'Essai de silence',
  'Fault test': 'Essai de dérangement',
  '{n} percent test filter on, slowly': "Filtre d'essai de {n} pour cent, lentement",
  'test filter on, slowly': "filtre d'essai, lentement",
  'Panel: read the meter, then watch the panel. Say alarm, or what it shows, at once.':
    "Centrale: lisez l'appareil, puis surveillez la centrale. Dites aussitôt «alarme», ou ce qu'elle affiche.",
  'Watch for alarm': "Guetter l'alarme",
  'Panel: read the meter, then watch the panel. Say fault, or what it shows, at once.':
    "Centrale: lisez l'appareil, puis surveillez la centrale. Dites aussitôt «dérangement», ou ce qu'elle affiche.",
  'Watch for fault': 'Guetter le dérangement',
  'Panel: reset it. Say when the panel shows normal.':
    "Centrale: réarmez. Dites «normal» quand la centrale l'affiche.",
  'Watch for normal': "Attendre l'état normal",
  'Panel: read the meter, then watch the panel. It must stay at normal. Say alarm at once if it comes.':
    "Centrale: lisez l'appareil, puis surveillez la centrale. Elle doit rester normale. Dites aussitôt «alarme» si elle vient.",
  'No alarm must come: wait': 'Aucune alarme ne doit venir: attendre',
  'Panel: the path must be clear. What does the meter show?':
    "Centrale: le trajet doit être dégagé. Qu'affiche l'appareil?",
  'Path clear: read the meter': "Trajet dégagé: lire l'appareil",
  'Panel: leave the cover on. What does the meter show?':
    "Centrale: laissez le cache en place. Qu'affiche l'appareil?",
  'Cover on: read the meter': "Masqué: lire l'appareil",
  'The reading with the path clear has fallen since the alignment was accepted. Please check: {list}. Then say done, and read again. If it stays low, the alignment is made again.':
    "La valeur avec le trajet dégagé a baissé depuis que l'alignement a été accepté. Vérifiez: {list}. Puis dites «fait», et relisez. Si elle reste basse, on refait l'alignement.",
  'Beam lost or moved. Check: {list}': 'Faisceau perdu ou déplacé. Vérifier: {list}',
  'The reading stays low: this alignment no longer stands. Aim the emitter by eye, within fifteen centimetres of the receiver. Then say done.':
    "La valeur reste basse: cet alignement ne tient plus. Visez à l'œil, à moins de quinze centimètres du récepteur. Puis dites «fait».",
  'Align again: aim by eye, within 15 cm of the receiver':
    "Refaire l'alignement: viser à l'œil, à moins de 15 cm du récepteur",
  'The signal fell since the last visit. Check: {list}. Then say done.':
    'Le signal a baissé depuis la dernière visite. Vérifiez: {list}. Puis dites «fait».',
  'Less signal than at the last visit. Check: {list}':
    "Moins de signal qu'à la dernière visite. Vérifier: {list}",
  'The only filter here that can bring the alarm is so strong that the detector may take it for a lost beam. Please look for a weaker test filter that is still above the threshold, and enter it in the plan of a new visit. Say done to go on with this one.':
    "Le seul filtre ici qui peut donner l'alarme est si fort que le détecteur peut le prendre pour un faisceau perdu. Cherchez un filtre d'essai plus faible, encore au-dessus du seuil, et inscrivez-le au plan d'une nouvelle visite. Dites «fait» pour continuer avec celui-ci.",
  'Is there a weaker filter?': 'Y a-t-il un filtre plus faible?',
  'No cover here is right for this threshold: bring a filter of at least {n} percent, enter it in the plan, and begin a new visit. Restore the alarm outputs before you leave.':
    "Aucun cache ici ne convient à ce seuil: apportez un filtre d'au moins {n} pour cent, inscrivez-le au plan, et commencez une nouvelle visite. Rétablissez les sorties d'alarme avant de partir.",
  'No cover here is right for this threshold: bring a filter of at least {n} percent, but not over {n1}, enter it in the plan, and begin a new visit. Restore the alarm outputs before you leave.':
    "Aucun cache ici ne convient à ce seuil: apportez un filtre d'au moins {n} pour cent, mais pas plus de {n1}, inscrivez-le au plan, et commencez une nouvelle visite. Rétablissez les sorties d'alarme avant de partir.",
  'Bring a filter of at least {n} %': "Apporter un filtre d'au moins {n} %",
  'A {n} percent filter? The plan has no test filter. Take it off, or say half covered if half is covered.':
    "Un filtre de {n} pour cent? Le plan n'a pas de filtre d'essai. Retirez-le, ou dites «à moitié masqué» si la moitié est masquée.",
  'A {n} percent filter? The plan has {filters} percent. Which is on? Say it whole: {n1} percent filter on.':
    'Un filtre de {n} pour cent? Le plan a {filters} pour cent. Lequel est en place? Dites-le en entier: «filtre de {n1} pour cent en place».',
  'the panel did not show it in time': "la centrale ne l'a pas affiché à temps",
  'the panel showed an alarm behind a cover that is clearly below the alarm threshold':
    'la centrale a affiché une alarme derrière un cache nettement sous le seuil',
  'the panel showed both alarm and fault': 'la centrale a affiché alarme et dérangement',
  'the panel showed both alarm and fault behind a cover that must bring neither':
    "la centrale a affiché alarme et dérangement derrière un cache qui ne doit donner ni l'un ni l'autre",
  'the panel showed something else': 'la centrale a affiché autre chose',
  'the panel showed it too early': "la centrale l'a affiché trop tôt",
  'the panel showed it too late': "la centrale l'a affiché trop tard",
  'the reading with the cover on was not as expected': "la valeur avec le cache n'était pas celle attendue",
  'the reading with the path clear has fallen: the beam was lost or moved, and the cover was not wrong':
    "la valeur avec le trajet dégagé a baissé: le faisceau a été perdu ou déplacé, et le cache n'était pas en cause",
  'the panel did not come back to normal in time': "la centrale n'est pas revenue à la normale à temps",
  'Failed: {what}.': 'Manqué: {what}.',
  '{test} failed: {why}.': '{test} manqué: {why}.',
  '{test} failed: {why} ({figures}).': '{test} manqué: {why} ({figures}).',
  'Tested again, and passed.': 'Refait, et réussi.',
  'The entry it rests on was taken back.': "L'entrée sur laquelle cela repose a été annulée.",
  'the test that a weak filter brings no alarm, passed':
    "l'essai, réussi, qu'un filtre faible ne donne pas d'alarme",
  'the alarm test, passed': "l'essai d'alarme, réussi",
  'the fault test, passed': "l'essai de dérangement, réussi",
  'an accepted alignment': 'un alignement accepté',
  'a reading after the tests': 'une valeur après les essais',
  'an answer to the open issue: {x}': 'une réponse au point ouvert: {x}',
  'It cannot be signed yet. Missing: {needs}.': 'On ne peut pas encore signer. Il manque: {needs}.',
  'The only filter here that can bring the alarm is so strong that the detector may take it for a lost beam. Please look {list}, and enter it in the plan of a new visit. Say done to go on with this one.':
    "Le seul filtre ici qui peut donner l'alarme est si fort que le détecteur peut le prendre pour un faisceau perdu. Cherchez {list}, et inscrivez-le au plan d'une nouvelle visite. Dites «fait» pour continuer avec celui-ci.",
};

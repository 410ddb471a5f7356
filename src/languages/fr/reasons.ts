import type { Sentences } from '../translate.ts';

export const REASONS: Sentences = {
  'Once the alignment is accepted, nothing more is turned.':
    "Une fois l'alignement accepté, on ne tourne plus rien.",
  'Nothing is judged while the path is covered: uncover it, unless it is covered for the blocking check.':
    "Rien n'est jugé tant que le trajet est masqué: dégagez-le, sauf pour l'essai de masquage.",
  'After hands off, wait until the reading has settled or two readings agree; only then judge.':
    'Mains écartées, attendez que la valeur se stabilise ou que deux valeurs concordent; alors seulement jugez.',
  'Every turn and every gain change is judged by a reading taken after it.':
    'Chaque tour et chaque changement de gain est jugé par une valeur lue après.',
  'A reading that keeps changing is no evidence: find what moves first.':
    "Une valeur qui change sans cesse ne prouve rien: trouvez d'abord ce qui bouge.",
  'A reading that does not fit the earlier ones is read again before it counts.':
    'Une valeur qui ne va pas avec les précédentes est relue avant de compter.',
  'If the reading is confirmed, the crew is asked about the turn before it: wrong way, wrong adjuster, half or double. Where light does not come back, about each turn since.':
    "Si la valeur est confirmée, on interroge sur le tour d'avant: mauvais sens, mauvaise vis, moitié ou double. Si la lumière ne revient pas, sur chaque tour depuis.",
  'A low reading that nothing before it predicts may later prove a side of the peak, so it is read twice; in a plain search every reading is.':
    "Une valeur basse que rien n'annonçait peut plus tard prouver un côté du maximum, elle est donc lue deux fois; dans une recherche simple, toutes le sont.",
  'If the reading stays when the direct path is blocked, the light comes from a reflection: aim again.':
    "Si la valeur reste quand le trajet direct est masqué, la lumière vient d'un reflet: visez de nouveau.",
  'With no signal, search at full gain.': 'Sans signal, cherchez avec le gain au maximum.',
  'Read what is there; then, before anything is turned, aim at the receiver by eye, within {near}, or by the laser if there is one: light by way of a wall looks like the beam.':
    "Lire ce qu'il y a; puis, avant de tourner quoi que ce soit, viser le récepteur à l'œil, à moins de {near}, ou au laser s'il y en a un: la lumière renvoyée par un mur ressemble au faisceau.",
  'With no signal at full gain, bring the emitter by eye to within {near} of the receiver.':
    "Sans signal au gain maximum, visez à l'œil avec l'émetteur à moins de {near} du récepteur.",
  'With no signal after aiming, turn the two adjusters through a widening square and remember each place.':
    'Sans signal après la visée, tournez les deux vis en un carré qui grandit et retenez chaque place.',
  'When the square has found nothing, work through the causes, most likely first.':
    "Si le carré n'a rien trouvé, passez les causes en revue, la plus probable d'abord.",
  'When a turn loses the signal, go back to where it was seen.':
    "Si un tour perd le signal, revenez là où on l'a vu.",
  'When the meter is saturated, lower the gain and continue with the same adjuster in the same direction.':
    "Quand l'appareil est saturé, baissez le gain et continuez avec la même vis dans le même sens.",
  'A detector that sets its own gain gets time to do so, and is read again.':
    'À un détecteur qui règle lui-même son gain, on laisse le temps, et on relit.',
  'A search that goes on too long without proof, or whose confirmed readings fit no beam, begins again with an aim by eye.':
    "Une recherche trop longue sans preuve, ou dont les valeurs confirmées ne vont avec aucun faisceau, recommence par une visée à l'œil.",
  'Where the readings fit no beam, go one adjuster at a time, reach every place next to the peak clockwise, and stop between two lower readings.':
    "Si les valeurs ne vont avec aucun faisceau, une vis après l'autre, arrivez à chaque place près du maximum dans le sens horaire, et arrêtez entre deux valeurs plus basses.",
  'A narrow light found so may be a side lobe: the places around it where the beam can be are read, and anything brighter is taken up.':
    'Une lumière étroite ainsi trouvée peut être un lobe secondaire: on lit autour les places où le faisceau peut être, et on suit ce qui est plus fort.',
  'A search that finds no end is stopped: turns are miscounted, or something moves or stands in the light. Find it first.':
    "Une recherche sans fin est arrêtée : des tours sont mal comptés, ou quelque chose bouge ou se trouve dans la lumière. Trouvez-le d'abord.",
  'If light stays behind the card after two more aims by eye, aiming is not the cure: find where it comes from.':
    "Si de la lumière reste derrière la carte après deux autres visées à l'œil, viser n'est pas le remède : trouvez d'où elle vient.",
  "A detector that sets its own gain is told to set it at the peak, as its maker's instructions say.":
    'Un détecteur qui règle lui-même son gain le règle au maximum, comme le dit la notice du fabricant.',
  'Turn one adjuster a known amount to learn which way the signal rises.':
    "Tournez une vis d'une quantité connue pour savoir dans quel sens le signal monte.",
  'Keep turning the way the signal rises.': 'Continuez à tourner dans le sens où le signal monte.',
  'Go past the peak until the reading falls, so that it is bracketed from both sides.':
    "Dépassez le maximum jusqu'à ce que la valeur baisse, pour l'encadrer des deux côtés.",
  'A fall means the peak lies the other way: turn back through it.':
    "Une baisse veut dire que le maximum est de l'autre côté: revenez en le traversant.",
  'With the peak bracketed, turn straight to where the readings place it.':
    'Le maximum encadré, tournez droit là où les valeurs le placent.',
  'Light where this beam cannot be comes from a second peak: measure it, and keep the higher one.':
    "Une lumière là où ce faisceau ne peut pas être vient d'un second maximum: mesurez-le, et gardez le plus haut.",
  'A peak far from the aim by eye may be a side lobe: look just as far on the other side of the aim.':
    "Un maximum loin de la visée à l'œil peut être un lobe secondaire: cherchez aussi loin de l'autre côté.",
  'Set the gain so that the peak reads in the middle of the band.':
    'Réglez le gain pour que le maximum soit au milieu de la bande.',
  'One gain step puts the peak below the band and the next one above it: the gain is not changed any more.':
    'Un pas de gain met le maximum sous la bande et le suivant au-dessus: on ne change plus le gain.',
  'Both peaks are checked at the final gain: a lower settled reading on each side.':
    'Les deux maximums sont vérifiés au gain final: une valeur stabilisée plus basse de chaque côté.',
  'If light brighter than this peak was read and is gone, the screws are not where the count says: aim again.':
    'Si une lumière plus forte que ce maximum a été lue et a disparu, les vis ne sont pas là où le compte le dit: visez de nouveau.',
  'After checking a side, turn back to the peak, from the side the search came from.':
    "Après avoir vérifié un côté, revenez au maximum, du côté d'où venait la recherche.",
  'A peak that stays below the band at full gain is not accepted: find out why it is weak.':
    "Un maximum qui reste sous la bande au gain maximum n'est pas accepté: cherchez pourquoi il est faible.",
  'A peak that saturates the meter at the lowest gain is not accepted: find out why it is strong.':
    "Un maximum qui sature l'appareil au gain minimum n'est pas accepté: cherchez pourquoi il est fort.",
  'With an adjuster stuck, the other one is worked on first; then it must be freed, or the work stops with a note.':
    "Si une vis est coincée, on travaille d'abord sur l'autre; puis il faut la libérer, ou le travail s'arrête avec une note.",
  'With the peak beyond the end of an adjuster, the screws go back to their middle and the unit is aimed again.':
    "Si le maximum est au-delà de la butée d'une vis, les vis reviennent au milieu et on vise de nouveau.",
  'Before acceptance the direct path is blocked: the reading must go to nothing and come back the same.':
    "Avant d'accepter, on masque le trajet direct: la valeur doit tomber à rien puis revenir la même.",
  'The final reading must stay within tolerance for the hold time.':
    'La valeur finale doit rester dans la tolérance pendant le temps de maintien.',
  'When all the evidence is there, the crew accepts.': "Quand toutes les preuves sont là, l'équipe accepte.",
  'Nobody climbs, and nothing is tested, before the list is answered.':
    "Personne ne monte, et rien n'est essayé, avant que la liste soit remplie.",
  'A periodic visit begins with the signal as it is found, before anything is touched.':
    'Une visite périodique commence par le signal tel que trouvé, avant de toucher à quoi que ce soit.',
  'Dirt takes light away: the windows are cleaned, or the crew says that they were not.':
    "La saleté prend de la lumière: on nettoie les vitres, ou l'équipe dit que non.",
  'After cleaning the meter is read again: what came back was dirt.':
    "Après le nettoyage on relit l'appareil: ce qui est revenu était de la saleté.",
  'Where the signal is less than the last visit left, the cause is looked for; if it stays low, the beam is aligned again.':
    "Si le signal est plus faible qu'à la dernière visite, on cherche la cause; s'il reste bas, on refait l'alignement.",
  'The signal that is kept must stay within tolerance for the hold time.':
    'Le signal gardé doit rester dans la tolérance pendant le temps de maintien.',
  'Untouched and as bright as the last visit left it, the alignment is kept; the tests follow.':
    "Sans y toucher et aussi fort qu'à la dernière visite, l'alignement est gardé; les essais suivent.",
  'A test starts with the panel at normal: only then does what it shows count.':
    "Un essai commence avec la centrale à l'état normal: alors seulement ce qu'elle affiche compte.",
  'Before every cover the meter is read with the path clear: what the cover holds back is counted from there.':
    "Avant chaque cache on lit l'appareil, trajet dégagé: ce que le cache retient se compte de là.",
  'After every cover the meter is read with the path clear: is the beam still what it was?':
    "Après chaque cache on lit l'appareil, trajet dégagé: le faisceau est-il encore ce qu'il était?",
  'If the reading with the path clear has fallen, the beam was lost or moved: find the cause; if it stays low, align again.':
    "Si la valeur avec le trajet dégagé a baissé, le faisceau a été perdu ou déplacé: cherchez la cause; si elle reste basse, refaites l'alignement.",
  'A loss clearly below the alarm threshold must not give an alarm.':
    "Une perte nettement sous le seuil ne doit pas donner d'alarme.",
  'Slowly blocking part of the light must give an alarm after the set delay, and no sooner.':
    'Masquer lentement une partie de la lumière doit donner une alarme après la temporisation réglée, pas avant.',
  'Blocking all of the light at once must give a fault after the set delay.':
    "Masquer toute la lumière d'un coup doit donner un dérangement après la temporisation réglée.",
  'A filter this strong may look like a lost beam, and bring a fault: it is used only if there is no weaker one.':
    "Un filtre si fort peut ressembler à un faisceau perdu et donner un dérangement: on ne l'utilise que s'il n'y en a pas de plus faible.",
  'Where the meter can tell, a test counts only with a reading behind the cover.':
    "Quand l'appareil peut le dire, un essai ne compte qu'avec une valeur derrière le cache.",
  'Without a reading before the cover, behind it and after it, the test does not count.':
    "Sans une valeur avant le cache, derrière lui et après, l'essai ne compte pas.",
  'The last cover was too near the alarm threshold, or nobody knows which it was: that test does not count.':
    "Le dernier cache était trop près du seuil, ou personne ne sait lequel c'était: cet essai ne compte pas.",
  'Only a cover clearly above the alarm threshold proves the alarm.':
    "Seul un cache nettement au-dessus du seuil prouve l'alarme.",
  'Uncovered and reset, the panel must come back to normal.':
    'Dégagé et réarmée, la centrale doit revenir à la normale.',
  'The panel must show this pair, in its zone, and no other.':
    'La centrale doit montrer cette paire, dans sa zone, et aucune autre.',
  'A broken wire between detector and panel must show as a fault.':
    'Un fil coupé entre détecteur et centrale doit donner un dérangement.',
  'After the tests the reading must be what it was when the alignment was accepted.':
    "Après les essais la valeur doit être celle de l'alignement accepté.",
  'After a failed test, the cause is fixed and the test is repeated, or somebody answers for it in writing.':
    "Après un essai manqué, on corrige la cause et on refait l'essai, ou quelqu'un en répond par écrit.",
  'Nobody leaves before the protection is back.': 'Personne ne part avant que la protection soit rétablie.',
  'With everything proven and back in service, the record can be signed.':
    'Tout étant prouvé et remis en service, le registre peut être signé.',
  'Once the record is signed, nothing more is touched.':
    'Une fois le registre signé, on ne touche plus à rien.',
  'Where no number is read, every turn is judged by whether the light rose, fell or stayed.':
    "Là où aucun nombre n'est lu, chaque tour se juge selon que la lumière monte, baisse ou reste.",
  'Where no number is read, the peak is the middle between two places from which the light falls alike.':
    "Là où aucun nombre n'est lu, le maximum est le milieu entre deux places d'où la lumière baisse de la même façon.",
};

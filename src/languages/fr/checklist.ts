import type { Sentences } from '../translate.ts';

export const CHECKLIST: Sentences = {
  'Panel: are the alarm outputs isolated? Say yes or no.':
    "Centrale: les sorties d'alarme sont-elles isolées? Dites «oui» ou «non».",
  'Alarm outputs isolated?': "Sorties d'alarme isolées?",
  'alarm outputs isolated': "sorties d'alarme isolées",
  'alarm outputs not isolated': "sorties d'alarme non isolées",
  'Panel: who was told that the alarm is out of service? For example, say: told the control room.':
    "Centrale: qui a été prévenu que l'alarme est hors service? Dites par exemple: «salle de contrôle prévenue».",
  'Who was told?': 'Qui a été prévenu?',
  told: 'prévenu',
  'told: {x}': 'prévenu: {x}',
  'nobody told yet': 'personne encore prévenu',
  'Is the ladder or platform inspected, and safe to climb? Say yes or no.':
    "L'échelle ou la plateforme est-elle contrôlée, et sûre pour monter? Dites «oui» ou «non».",
  'Access equipment inspected?': "Moyen d'accès contrôlé?",
  'access equipment inspected': "moyen d'accès contrôlé",
  'access equipment not inspected': "moyen d'accès non contrôlé",
  'Nobody may look into an aiming laser, here or below. Agreed? Say yes or no.':
    "Personne ne doit regarder un laser de visée, ni ici ni en bas. D'accord? Dites «oui» ou «non».",
  'Nobody looks into a laser: agreed?': "Personne ne regarde le laser: d'accord?",
  'laser caution agreed': 'consigne laser acceptée',
  'laser caution not agreed': 'consigne laser non acceptée',
  'Is the beam path clear from end to end? Say yes or no.':
    "Le trajet du faisceau est-il dégagé d'un bout à l'autre? Dites «oui» ou «non».",
  'Beam path clear?': 'Trajet du faisceau dégagé?',
  'path clear from end to end': "trajet dégagé d'un bout à l'autre",
  'path not clear': 'trajet non dégagé',
  'Clean the windows of both units as the maker says. Were they cleaned? Say yes or no.':
    'Nettoyez les vitres des deux appareils comme le dit le fabricant. Ont-elles été nettoyées? Dites «oui» ou «non».',
  'Windows of both units cleaned?': 'Vitres des deux appareils nettoyées?',
  'windows cleaned': 'vitres nettoyées',
  'windows not cleaned': 'vitres non nettoyées',
  'Panel: does the alarm show this pair, in its zone, and no other? Say yes or no.':
    "Centrale: l'alarme montre-t-elle cette paire, dans sa zone, et aucune autre? Dites «oui» ou «non».",
  'Right pair and zone on the panel?': 'Bonne paire et bonne zone à la centrale?',
  'panel shows the right pair and zone': 'la centrale montre la bonne paire et la bonne zone',
  'panel does not show the right pair and zone': 'la centrale ne montre pas la bonne paire et la bonne zone',
  'Wiring test: open the line to the panel at the detector, then close it. Did a fault show, and then clear? Say yes or no.':
    'Essai de ligne: ouvrez la ligne vers la centrale au détecteur, puis refermez-la. Un dérangement est-il apparu, puis parti? Dites «oui» ou «non».',
  'Wiring test: open line gives fault?': 'Essai de ligne: ligne ouverte, dérangement?',
  'open line gave a fault, and it cleared': 'la ligne ouverte a donné un dérangement, puis il est parti',
  'wiring test failed': 'essai de ligne manqué',
  'Panel: are the alarm outputs restored, and was everybody told? Say yes or no.':
    "Centrale: les sorties d'alarme sont-elles rétablies, et tout le monde prévenu? Dites «oui» ou «non».",
  'Alarm outputs restored?': "Sorties d'alarme rétablies?",
  'alarm outputs restored': "sorties d'alarme rétablies",
  'alarm outputs still isolated': "sorties d'alarme encore isolées",
  'Are the covers on, and is the path clear? Say yes or no.':
    'Les capots sont-ils en place, et le trajet dégagé? Dites «oui» ou «non».',
  'Covers on?': 'Capots en place?',
  'covers on': 'capots en place',
  'covers not on yet': 'capots pas encore en place',
  'Panel: is it back to normal, without fault or alarm? Say yes or no.':
    'Centrale: est-elle revenue à la normale, sans dérangement ni alarme? Dites «oui» ou «non».',
  'Panel normal?': 'Centrale normale?',
  'panel normal': 'centrale normale',
  'panel not normal': 'centrale pas normale',
};

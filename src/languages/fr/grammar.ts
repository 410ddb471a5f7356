import type { Intent } from '../../grammar/intent.ts';
import { gradedFilter } from '../../grammar/reporting.ts';
import { means, type Rules, said, say } from '../../grammar/rule.ts';
import { inEighths } from '../../grammar/turning.ts';
import { NO_SIGNAL, SATURATED } from '../../model/reading.ts';

const intent = <K extends Intent['kind']>(kind: K): { kind: K } => ({ kind });

const UNITS = ['un|une', ...'deux trois quatre cinq six sept huit neuf'.split(' ')];
const TEENS = [
  ...'dix onze douze treize quatorze quinze seize'.split(' '),
  ...['dix sept', 'dix huit', 'dix neuf'],
];
/** With those of Belgium and Switzerland. */
const TENS = [
  'vingt',
  'trente',
  'quarante',
  'cinquante',
  'soixante',
  'septante',
  'huitante|octante',
  'nonante',
];
const HUNDREDS = ['cent', ...UNITS.slice(1).map((unit) => `${unit} (cent|cents)`)];

const numbers = {
  zero: means('0', 'zéro'),
  unit: UNITS.flatMap((words, i) => means(String(i + 1), words)),
  teen: TEENS.flatMap((words, i) => means(10 + i, words)),
  tens: TENS.flatMap((words, i) => means(20 + 10 * i, words)),
  two: [
    say('<teen>', ({ teen }) => teen),
    say('<tens>', ({ tens }) => tens),
    say('<tens> [et] <unit>', ({ tens, unit }) => tens + Number(unit)),
    say('soixante [et] <teen>', ({ teen }) => 60 + teen),
    ...means(80, 'quatre (vingt|vingts)'),
    say('quatre (vingt|vingts) <unit>', ({ unit }) => 80 + Number(unit)),
    say('quatre (vingt|vingts) <teen>', ({ teen }) => 80 + teen),
  ],
  hundreds: HUNDREDS.flatMap((words, i) => means(100 + 100 * i, words)),
  thousands: [
    ...means(1000, 'mille'),
    say('<small> mille', ({ small }) => (small > 1 ? 1000 * small : undefined)),
  ],
  minus: means(true as const, 'moins'),
  point: means(true as const, 'virgule|point'),
  andHalf: means(true as const, 'et (demi|demie)'),
  measure: [
    ...means('percent', 'pourcent'),
    ...means('volts', 'volt|volts'),
    ...means('counts', 'points|coups'),
    ...means('decibels', 'décibel|décibels'),
    ...means('bars', 'barre|barres'),
    ...means('steps', 'pas|cran|crans'),
    ...means('segments', 'segment|segments'),
    ...means('divisions', 'division|divisions'),
    ...means('own', 'units|unités'),
  ],
} satisfies Rules;

const turning = {
  axis: [
    ...means('horizontal' as const, '[sur] [la|l|le] [vis|réglage] (horizontale|horizontal)'),
    ...means('vertical' as const, '[sur] [la|le] [vis|réglage] (verticale|vertical)'),
  ],
  sense: [
    ...means(
      'clockwise' as const,
      '[dans] [le] [sens] horaire|[dans] [le] sens des aiguilles [d une montre]',
    ),
    ...means(
      'anticlockwise' as const,
      '[dans] [le] [sens] (antihoraire|anti horaire)|[dans] [le] sens (inverse|contraire) des aiguilles [d une montre]|[dans] [le] sens trigonométrique',
    ),
    ...means(
      'back' as const,
      'en arrière|[en] retour|[dans] l autre sens|[dans] [le] sens (inverse|contraire)',
    ),
    ...means('on' as const, '[encore] plus loin|en avant|[dans] [le] même sens|en plus'),
  ],
  way: [
    say('<sense>', ({ sense }) => sense),
    ...means('left' as const, '[à|vers la] gauche'),
    ...means('right' as const, '[à|vers la] droite'),
    ...means('up' as const, '(vers le|en) haut'),
    ...means('down' as const, '(vers le|en) bas'),
    ...means('in' as const, 'vers (le dedans|dedans)|en (vissant|serrant)'),
    ...means('out' as const, 'vers (le dehors|dehors)|en (dévissant|desserrant)'),
  ],
  part: [
    ...means(1, '[un] huitième'),
    ...means(2, '[un] quart|deux huitièmes'),
    ...means(3, 'trois huitièmes'),
    ...means(4, '[un|une] (demi|demie)|deux quarts|quatre huitièmes'),
    ...means(5, 'cinq huitièmes'),
    ...means(6, 'trois quarts|six huitièmes'),
    ...means(7, 'sept huitièmes'),
  ],
  turns: [
    say('<part> [de] tour', ({ part }) => part),
    ...means(8, 'un tour [entier|complet]'),
    say('un tour et <part>', ({ part }) => 8 + part),
    ...means(16, 'deux tours [entiers|complets]'),
    say('deux tours et <part>', ({ part }) => 16 + part),
    ...means(24, 'trois tours [entiers|complets]'),
    say('<numeral> (tour|tours)', ({ numeral }) => inEighths(numeral)),
    say('<fraction> [de] [tour|tours]', ({ fraction }) => inEighths(fraction)),
  ],
  toVerb: means(true as const, '[j ai|on a|nous avons] (tourné|bougé|fait|déplacé|donné)|seulement'),
} satisfies Rules;

const reporting = {
  state: [
    ...means(
      NO_SIGNAL,
      '(pas de|aucun|aucune|plus de|sans) (signal|valeur|lumière)|rien|[le] signal [est] perdu',
    ),
    ...means(
      SATURATED,
      '[c est|est|il est] (saturé|saturée)|[ça] sature|trop (de (signal|lumière)|fort|forte)|hors échelle',
    ),
  ],
  lead: means(
    true as const,
    '[maintenant] (affiche|indique|lis|vois|donne)|[maintenant] (il|ça) (affiche|indique|donne)|je (lis|vois)|j ai|on a|c est|est à',
    '[l] appareil (affiche|indique)|[la] (valeur|lecture) [est|est de|de]|exactement',
  ),
  near: means(true as const, 'environ|à peu près|presque|vers|autour de|dans les'),
  trend: [
    ...means(
      'rising' as const,
      '[ça|il|elle|la valeur] (monte|augmente|grimpe)|[c est] mieux|plus (haut|fort|clair)|en hausse',
    ),
    ...means(
      'falling' as const,
      '[ça|il|elle|la valeur] (baisse|descend|diminue|chute)|[c est] (moins bien|pire)|plus (bas|faible|sombre)|en baisse',
    ),
    ...means(
      'steady' as const,
      '[c est|est|reste|ça reste] (stable|fixe|constant|constante|pareil|inchangé)|[ça] [ne] (bouge|change) (pas|plus)|pas de changement|la même',
    ),
    ...means(
      'wandering' as const,
      '[ça|il|elle] (oscille|varie|saute|fluctue)|[c est] instable|ça (bouge|change) [sans cesse]|monte et descend',
    ),
  ],
  gain: [
    say('[le] (gain|réglage) [est] (baissé|réduit|diminué|plus bas) <aim?>', ({ aim }) =>
      said({ kind: 'gain' as const, change: 'lowered' as const, to: aim }),
    ),
    say('[j ai] (baissé|réduit|diminué) le gain <aim?>', ({ aim }) =>
      said({ kind: 'gain' as const, change: 'lowered' as const, to: aim }),
    ),
    say('[le] gain [est] (monté|augmenté|plus haut) <aim?>', ({ aim }) =>
      said({ kind: 'gain' as const, change: 'raised' as const, to: aim }),
    ),
    say('[j ai] (monté|augmenté) le gain <aim?>', ({ aim }) =>
      said({ kind: 'gain' as const, change: 'raised' as const, to: aim }),
    ),
    say('[le] gain [est] [réglé|mis] (à|sur) [le] [pas|cran] <number> <measure?>', ({ number }) => ({
      kind: 'gain' as const,
      change: 'set' as const,
      to: number,
    })),
    ...means(
      { kind: 'gain' as const, change: 'full' as const },
      '[le] gain [est] (au maximum|au max|maximum|à fond)',
    ),
  ],
  graded: [
    say('[le] filtre [d essai] [de|à] <grade> [pourcent] [est] (en place|posé|mis)', ({ grade }) =>
      gradedFilter(grade),
    ),
  ],
  path: [
    ...means(
      { kind: 'path' as const, state: 'blocked' as const },
      '[le] [faisceau|trajet|récepteur] [est] [tout|entièrement] (masqué|couvert|caché|obstrué)|c est (masqué|couvert|caché)|(carton|cache) (en place|posé)|[il y a] (quelque chose|quelqu un) (dans le faisceau|devant)',
    ),
    ...means(
      { kind: 'path' as const, state: 'partial' as const },
      '[le] [faisceau|récepteur] [est] (en partie|partiellement) (masqué|couvert)',
    ),
    ...means(
      { kind: 'path' as const, state: 'partial' as const, by: 'half' as const },
      '[le] [faisceau|récepteur] [est] [à] moitié (masqué|couvert)|la moitié [est] (masquée|couverte)',
    ),
    ...means(
      { kind: 'path' as const, state: 'partial' as const, by: 'filter' as const },
      '[le] filtre [d essai] [est] (en place|posé|mis)',
    ),
    ...means(
      { kind: 'path' as const, state: 'clear' as const },
      '[le] [faisceau|trajet|récepteur] [est] [de nouveau] (dégagé|libre|découvert)|c est (dégagé|libre)|[le] (filtre|carton|cache) [est] (retiré|enlevé)|rien (dans le faisceau|devant)|(pas|plus) masqué',
    ),
  ],
  panel: [
    ...means(
      { kind: 'panel' as const, shows: 'alarm' as const },
      '[la] [centrale] [affiche|indique|montre|est en] [une|en] alarme [feu|incendie]',
    ),
    ...means(
      { kind: 'panel' as const, shows: 'fault' as const },
      '[la] [centrale] [affiche|indique|montre|est en] [un|en] (dérangement|défaut)',
    ),
    ...means(
      { kind: 'panel' as const, shows: 'normal' as const },
      '[la] [centrale] [affiche|indique|est] [tout|tout est] (normal|normale|en veille|au repos)|[la] [centrale] [affiche|est à] l état normal|(revenue|retour) à la normale|(réarmée|réarmé)|pas d alarme|pas de (défaut|dérangement)',
    ),
  ],
  whom: [
    ...means('the control room', '[la] salle de contrôle|[le] (poste de contrôle|pc sécurité)'),
    ...means('security', '[la] sécurité|[le] (gardien|vigile)|[les] (gardiens|vigiles)'),
    ...means('reception', '[l] accueil|[la] réception'),
    ...means('the fire brigade', '[les] pompiers'),
    ...means('everyone', 'tout le monde|tous'),
  ],
  informed: [
    say('[j ai|on a|nous avons] (prévenu|averti|informé) <whom>', ({ whom }) => ({
      kind: 'told' as const,
      who: whom,
    })),
    say(
      '<whom> [est|sont|a été|ont été] (prévenu|prévenue|prévenus|averti|avertie|avertis|informé|informée|informés)',
      ({ whom }) => ({
        kind: 'told' as const,
        who: whom,
      }),
    ),
  ],
  done: means<Intent>(
    { kind: 'done' },
    '[c est|j ai|voilà c est] (fait|terminé|fini|réglé|tourné|visé)|[tout est|tout] vérifié|ça y est|voilà',
  ),
} satisfies Rules;

const commanding = {
  and: means(true as const, 'et|et maintenant|maintenant'),
  to: means(true as const, 'à|jusqu à|vers'),
  not: means(true as const, '[et] (pas|non)|et non pas'),
  assent: means<Intent>({ kind: 'yes' }, 'oui'),
  pause: means<Intent>({ kind: 'wait' }, '[et] (attends|attendez|un moment|un instant)'),
  correcting: means(
    true as const,
    'non|[non] correction|[non] pardon|[non] erreur|[non] je (voulais dire|veux dire)|[non] plutôt|[non] faux',
  ),
  yes: means(
    intent('yes'),
    'oui|[oui] (exact|exactement|juste|correct)|[oui] c est (ça|exact|juste|correct|bien ça)|affirmatif|d accord|confirmé|compris|[bien] reçu|okay',
  ),
  command: [
    ...means(
      intent('no'),
      'non|négatif|correction|[non] (faux|incorrect)|[non] c est faux|pas (juste|correct|exact)|ni l un ni l autre|aucun [des deux]|personne [encore]',
    ),
    ...means(
      intent('undo'),
      '(annuler|annule|annulez|efface|effacez|oublie|oubliez|retire|retirez|supprimer) [ça|cela|le dernier|la dernière]',
    ),
    ...means(
      intent('repeat'),
      '(répéter|répète|répétez|redis|redites) [ça]|encore une fois|pardon|comment|[je] [n ai] pas (compris|entendu)',
    ),
    ...means(
      intent('wait'),
      '(attendre|attends|attendez) [un moment|un instant]|[un] (moment|instant)|[une] (seconde|minute)|pas encore|pause|pas (prêt|prête)|je descends',
    ),
    ...means(
      intent('resume'),
      'continuer|continue|continuez|on (continue|reprend)|[je suis|on est|nous sommes] (prêt|prête|prêts)|[je suis] de retour|allez y|vas y|suivant',
    ),
    ...means(
      { kind: 'cannot' as const, why: 'stuck' as const },
      '[c est|la vis est|elle est|est] (coincé|coincée|bloqué|bloquée|grippé|grippée)|[la vis|elle|ça] [ne] tourne pas',
    ),
    ...means(
      { kind: 'cannot' as const, why: 'end-of-travel' as const },
      '[c est|est|la vis est|elle est] [en] butée|[à la|en] fin de course|[en] bout de course|[ça] [ne] va pas plus loin',
    ),
    ...means(
      { kind: 'cannot' as const, why: 'out-of-reach' as const },
      '[c est] hors de [ma] portée|[je] [n] y arrive pas|[je] [ne] l atteins pas|inaccessible',
    ),
    ...means(
      { kind: 'cannot' as const, why: 'unsaid' as const },
      '[c est] impossible|[je] [ne] peux pas|pas possible',
    ),
    ...means({ kind: 'swap' as const }, '(changer|change|changez) [de vis]|[l] autre vis'),
    say('(passer|passe|passez|continuer|continue) (à|sur|avec) <axis>', ({ axis }) => ({
      kind: 'swap' as const,
      axis,
    })),
    ...means(
      intent('ask-reading'),
      'qu affiche [t il|l appareil]|combien|quelle est la (valeur|lecture)|qu est ce (que tu lis|que vous lisez|qu il affiche)|tu lis (quoi|combien)',
    ),
    ...means(intent('accept'), '[j] (accepter|accepte|accepté|acceptons) [l alignement]'),
    ...means(intent('stop'), 'stop|arrêter|arrête|arrêtez|halte'),
    ...means(
      intent('start'),
      'démarrer|démarre|démarrez|commencer|commence|commencez|reprendre|redémarrer|recommencer',
    ),
    ...means(
      intent('unsure'),
      '[je] [ne] sais pas|[je ne suis] pas (sûr|sûre|certain|certaine)|aucune idée|passer|omettre',
    ),
    ...means(intent('why'), 'pourquoi'),
  ],
  sorry: means(true as const, 'pardon|désolé|désolée|excusez moi'),
  slip: [
    ...means(
      intent('knocked'),
      '(quelqu un|on) [l] a (cogné|heurté|bougé|poussé) [l émetteur]|[je l ai|j ai] (cogné|heurté) [l émetteur|le support]|[il y a eu] [un] choc|[le] support a bougé',
    ),
    ...means(intent('not-turned'), '[je] [n ai] (pas|rien) [encore] (tourné|touché)|pas bougé la vis'),
    ...means(intent('miscounted'), '[j ai] perdu le compte|[j ai] mal compté|trop [tourné|loin]'),
    ...means(intent('wrong-way'), '[dans] [le] mauvais sens|(tourné|c est) à l envers'),
    ...means(
      intent('wrong-screw'),
      '[tourné] [la] mauvaise vis|[j ai] tourné l autre vis|[je me suis] trompé de vis',
    ),
  ],
} satisfies Rules;

/** French. A native's check is still owed. */
export const RULES = { ...numbers, ...turning, ...reporting, ...commanding } satisfies Rules;

export const FILLERS = 'euh hum ben bah bon alors donc merci maintenant svp'.split(' ');

export const REMARK =
  /^\W*(?:note|noter|notez|remarque|observation|pour le registre)(?:\s+que)?(?=\W)[\s:,.;-]*(.*)$/isu;
export const TOLD =
  /^\W*(?:oui\W+)?(?:(?:j['’]ai|on a|nous avons)\s+)?(?:pr[ée]venue?s?|avertie?s?|inform[ée]e?s?)[\s:]+(\S.*)$/isu;

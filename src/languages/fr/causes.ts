import type { Sentences } from '../translate.ts';

export const CAUSES: Sentences = {
  'that each turn is the one asked for: adjuster, way and amount':
    'que chaque tour est celui demandé : vis, sens et quantité',
  'that the card covers the whole direct line, metres out':
    'que la carte couvre toute la ligne directe, à quelques mètres',
  "the maker's instructions, for how the detector sets its gain, or how to set it by hand":
    'la notice du fabricant : comment le détecteur règle son gain, ou comment le régler à la main',
  'power at both ends': "l'alimentation aux deux bouts",
  'the path, for anything in it': "le trajet, si quelque chose s'y trouve",
  'that the receiver faces the emitter': "que le récepteur fait face à l'émetteur",
  'that this emitter belongs to this receiver': 'que cet émetteur va avec ce récepteur',
  "the path length against the maker's range": 'la longueur du trajet par rapport à la portée du fabricant',
  'the units themselves': 'les appareils eux-mêmes',
  'the mounts, for looseness': 'les fixations, si elles ont du jeu',
  'the building, for movement': "le bâtiment, s'il bouge",
  'the receiver, for sun or lamps shining in': 'le récepteur, si le soleil ou une lampe y entre',
  'the path, for cranes, lifts or people passing':
    'le trajet, si des ponts roulants, des chariots ou des gens passent',
  'the air, for steam, dust or smoke': "l'air, s'il y a vapeur, poussière ou fumée",
  'the windows and lenses, for dirt': 'les vitres et les lentilles, si elles sont sales',
  'the edges of the path': 'les bords du trajet',
  'shiny surfaces beside the path': 'les surfaces brillantes près du trajet',
  'that the path is not shorter than the maker allows':
    "que le trajet n'est pas plus court que permis par le fabricant",
  'for the short-range filter, if the maker asks for one':
    'si le filtre de courte portée est là, si le fabricant en demande un',
  'for other light at the receiver': "s'il y a une autre lumière au récepteur",
  'the gain: free it, or say stop and note it': 'le gain: libérez-le, ou dites «stop» et notez-le',
  'the horizontal adjuster: free it, or say stop and note it':
    'la vis horizontale: libérez-la, ou dites «stop» et notez-le',
  'the vertical adjuster: free it, or say stop and note it':
    'la vis verticale: libérez-la, ou dites «stop» et notez-le',
  "the maker's instructions, for which of the two gain steps to use; then accept with a written reason":
    'les instructions du fabricant, pour savoir lequel des deux pas de gain utiliser; puis acceptez avec une raison écrite',
  'for a stronger test filter': "s'il y a un filtre d'essai plus fort",
  'for a weaker test filter that is still above the threshold':
    "s'il y a un filtre d'essai plus faible, encore au-dessus du seuil",
  'that the cover holds back enough light': 'que le cache retient assez de lumière',
  'how fast it was covered: slowly for an alarm, at once for a fault':
    "à quelle vitesse on a masqué: lentement pour une alarme, d'un coup pour un dérangement",
  'that "covered" is said at that moment, not later': 'que «masqué» est dit à ce moment, pas après',
  'that "covered" is said at that moment, not earlier': 'que «masqué» est dit à ce moment, pas avant',
  'the grade of the test filter against the plan': "le grade du filtre d'essai par rapport au plan",
  'the alarm threshold that is set': "le seuil d'alarme réglé",
  'the delays that are set': 'les temporisations réglées',
  'delays and verification at the panel': 'les temporisations et la confirmation à la centrale',
  'that the zone is not disabled at the panel': "que la zone n'est pas hors service à la centrale",
  'that the panel was reset': 'que la centrale a été réarmée',
  'the labels and addresses in the panel': 'les libellés et adresses dans la centrale',
  'the wires from the detector to the panel': 'les fils du détecteur à la centrale',
  'the end-of-line device': 'le dispositif de fin de ligne',
};

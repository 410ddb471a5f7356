import type { Sentences } from '../translate.ts';

/** What the desk has changed while the crew works. */
export const PLAN_CHANGES: Sentences = {
  'The desk has changed the plan of this pair: {list}. This visit goes by the old plan. Ask the desk before you go on: the new plan needs a new visit.':
    "Le bureau a changé le plan de cette paire: {list}. Cette visite suit l'ancien plan. Demandez au bureau avant de continuer: le nouveau plan demande une nouvelle visite.",
  'The desk has changed the plan of this pair back to what it was when this visit began: {list}. Go on.':
    'Le bureau a remis le plan de cette paire comme il était au début de cette visite: {list}. Continuez.',
  'The desk changed the plan: {list}': 'Le bureau a changé le plan: {list}',
  'Plan changed since this visit began: {list}': 'Plan changé depuis le début de cette visite: {list}',
  'not stated': 'non indiqué',
  '{field} from {x} to {x1}': '{field}: de {x} à {x1}',
  '{field} from not stated to {x}': '{field}: de non indiqué à {x}',
  '{field} from {x} to not stated': '{field}: de {x} à non indiqué',
  '{field}: {x} → {x1}': '{field}: {x} → {x1}',
  '{field}: not stated → {x}': '{field}: non indiqué → {x}',
  '{field}: {x} → not stated': '{field}: {x} → non indiqué',
  'other figures of {field}: {x}': 'autres valeurs de {field}: {x}',
  zone: 'zone',
  path: 'trajet',
  'emitter height': "hauteur de l'émetteur",
  'receiver height': 'hauteur du récepteur',
  'ceiling height': 'hauteur du plafond',
  spacing: 'espacement',
  'wall distance': 'distance au mur',
  meter: 'appareil de mesure',
  adjusters: 'vis',
  'test filters': "filtres d'essai",
  'shortest path allowed': 'trajet minimal admis',
  'longest path allowed': 'trajet maximal admis',
  'beam angle': 'angle du faisceau',
};

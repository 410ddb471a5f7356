import type { Sentences } from '../translate.ts';

/** What the desk has changed while the crew works. */
export const PLAN_CHANGES: Sentences = {
  'The desk has changed the plan of this pair: {list}. This visit goes by the old plan. Ask the desk before you go on: the new plan needs a new visit.':
    'Der Schreibtisch hat den Plan dieses Paares geändert: {list}. Dieser Besuch folgt dem alten Plan. Fragen Sie den Schreibtisch, bevor Sie weitermachen: der neue Plan braucht einen neuen Besuch.',
  'The desk has changed the plan of this pair back to what it was when this visit began: {list}. Go on.':
    'Der Schreibtisch hat den Plan dieses Paares wieder so geändert, wie er zu Beginn dieses Besuchs war: {list}. Machen Sie weiter.',
  'The desk changed the plan: {list}': 'Der Schreibtisch hat den Plan geändert: {list}',
  'Plan changed since this visit began: {list}': 'Plan geändert seit Beginn dieses Besuchs: {list}',
  'not stated': 'nicht angegeben',
  '{field} from {x} to {x1}': '{field}: von {x} auf {x1}',
  '{field} from not stated to {x}': '{field}: von nicht angegeben auf {x}',
  '{field} from {x} to not stated': '{field}: von {x} auf nicht angegeben',
  '{field}: {x} → {x1}': '{field}: {x} → {x1}',
  '{field}: not stated → {x}': '{field}: nicht angegeben → {x}',
  '{field}: {x} → not stated': '{field}: {x} → nicht angegeben',
  'other figures of {field}: {x}': 'andere Werte von {field}: {x}',
  zone: 'Zone',
  path: 'Weg',
  'emitter height': 'Höhe des Senders',
  'receiver height': 'Höhe des Empfängers',
  'ceiling height': 'Höhe der Decke',
  spacing: 'Abstand der Strahlen',
  'wall distance': 'Abstand zur Wand',
  meter: 'Messgerät',
  adjusters: 'Schrauben',
  'test filters': 'Prüffilter',
  'shortest path allowed': 'kürzester zulässiger Weg',
  'longest path allowed': 'längster zulässiger Weg',
  'beam angle': 'Strahlwinkel',
};

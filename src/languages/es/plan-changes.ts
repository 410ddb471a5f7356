import type { Sentences } from '../translate.ts';

/** What the desk has changed while the crew works. */
export const PLAN_CHANGES: Sentences = {
  'The desk has changed the plan of this pair: {list}. This visit goes by the old plan. Ask the desk before you go on: the new plan needs a new visit.':
    'El escritorio ha cambiado el plan de esta pareja: {list}. Esta visita sigue el plan antiguo. Pregunte al escritorio antes de seguir: el plan nuevo necesita una visita nueva.',
  'The desk has changed the plan of this pair back to what it was when this visit began: {list}. Go on.':
    'El escritorio ha vuelto a dejar el plan de esta pareja como cuando empezó esta visita: {list}. Siga.',
  'The desk changed the plan: {list}': 'El escritorio cambió el plan: {list}',
  'Plan changed since this visit began: {list}': 'Plan cambiado desde que empezó esta visita: {list}',
  'not stated': 'sin indicar',
  '{field} from {x} to {x1}': '{field}: de {x} a {x1}',
  '{field} from not stated to {x}': '{field}: de sin indicar a {x}',
  '{field} from {x} to not stated': '{field}: de {x} a sin indicar',
  '{field}: {x} → {x1}': '{field}: {x} → {x1}',
  '{field}: not stated → {x}': '{field}: sin indicar → {x}',
  '{field}: {x} → not stated': '{field}: {x} → sin indicar',
  'other figures of {field}: {x}': 'otras cifras de {field}: {x}',
  zone: 'zona',
  path: 'camino',
  'emitter height': 'altura del emisor',
  'receiver height': 'altura del receptor',
  'ceiling height': 'altura del techo',
  spacing: 'separación',
  'wall distance': 'distancia a la pared',
  meter: 'medidor',
  adjusters: 'tornillos',
  'test filters': 'filtros de prueba',
  'shortest path allowed': 'camino mínimo admitido',
  'longest path allowed': 'camino máximo admitido',
  'beam angle': 'ángulo del haz',
};

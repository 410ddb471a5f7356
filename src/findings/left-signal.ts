import { agree } from '../engine/stay.ts';
import { valueReading } from '../model/reading.ts';
import { finalReading } from '../visit/final.ts';
import { found, type Look } from './look.ts';

/** The signal that was written down as left is not what the meter showed last. */
export const leftSignal: Look = ({ end: { handOver }, commission }) => {
  const left = handOver.asLeft.signal;
  const by = handOver.leftBy.signal;
  const final = finalReading(commission);
  if (left === undefined || by === undefined || !final) return [];
  if (agree(valueReading(left), final.reading, commission.setup.meter)) return [];
  const figures = { left, ...(final.reading.kind === 'value' && { final: final.reading.value }) };
  const entries = [final.seq, by].sort((a, b) => a - b);
  return [found('left-signal', { severity: 'question', entries, figures })];
};

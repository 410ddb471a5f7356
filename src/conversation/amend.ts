import type { SearchFact, Seat } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import type { TypedLanguage } from '../model/language.ts';
import type { Placed } from '../model/placed.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { Reading } from '../model/reading.ts';
import { isReported } from '../model/reported.ts';
import { isShown, stepsOf } from '../model/shown.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import { movedText, searchFactText } from '../phrases/facts.ts';
import { stillTurned } from '../phrases/notices.ts';
import { offScaleText, offStepText } from '../phrases/questions.ts';
import { corrected, takenBack } from '../phrases/readbacks.ts';
import { readingText } from '../phrases/readings.ts';
import { CANNOT_TAKE_BACK, NOT_A_COUNTED_READING, notAReading } from '../phrases/refusals.ts';
import { understand } from '../understand/understand.ts';
import { countedOf } from '../visit/state.ts';
import type { Composer } from './composer.ts';
import type { Refused } from './input.ts';
import type { Speaker } from './speaker.ts';

export function lastReported(job: Composer): Placed<SearchFact['type']> | undefined {
  return countedOf(job.state).findLast((fact) => isReported(fact));
}

/** Why a number cannot be one of this meter's, or undefined. */
export function offScale(reading: Reading, meter: MeterProfile): string | undefined {
  if (reading.kind !== 'value') return undefined;
  const { value } = reading;
  const slack = meter.resolution / 2;
  if (value < meter.min - slack || value > meter.max + slack) return offScaleText(value, meter);
  return isShown(value, stepsOf(meter)) ? undefined : offStepText(value, meter);
}

/** A reading that replaces entry `target`, which stays in the log but no longer counts. */
export function replaceReading(job: Composer, seat: Seat, target: Seq, reading: Reading, from?: Seq): void {
  const meter = job.state.setup?.meter;
  const old = countedOf(job.state).find((fact) => fact.seq === target);
  if (!meter || old?.type !== 'reading') return;
  const source = from === undefined ? {} : { from };
  const seq = job.put(seat, { type: 'reading', reading, replaces: target, ...source });
  job.readback(seq, corrected(readingText(reading, meter), readingText(old.reading, meter)));
}

/** A turn that replaces entry `target`: what was really turned then. */
export function replaceMove(
  job: Composer,
  target: Seq,
  move: { axis: Axis; eighths: Eighths },
  { seat, said: from }: Speaker,
): void {
  const seq = job.put(seat, { type: 'move', ...move, replaces: target, from });
  job.readback(seq, corrected(movedText(move.axis, move.eighths)));
}

/** A correction made on the screen, at the entry itself. */
export function correctReading(
  job: Composer,
  { seat, target, text, language }: { seat: Seat; target: Seq; text: string; language?: TypedLanguage },
): Refused {
  const old = countedOf(job.state).find((fact) => fact.seq === target);
  const meter = job.state.setup?.meter;
  if (old?.type !== 'reading' || !meter) {
    return { reason: 'bad-target', text: NOT_A_COUNTED_READING };
  }
  const understanding = understand(text, language, { meter });
  const [only, ...more] = understanding.kind === 'understood' ? understanding.intents : [];
  if ((only?.kind !== 'reading' && only?.kind !== 'correct') || more.length > 0) {
    return { reason: 'bad-message', text: notAReading(text) };
  }
  const impossible = offScale(only.reading, meter);
  if (impossible) return { reason: 'bad-message', text: impossible };
  const from = job.put(seat, { type: 'said', seat, via: 'typed', text, ...(language && { language }) });
  replaceReading(job, seat, target, only.reading, from);
  return;
}

/** Takes an entry back, on the screen or by "undo". */
export function takeBack(job: Composer, seat: Seat, target: Seq, from?: Seq): Refused {
  const fact = countedOf(job.state).find((counted) => counted.seq === target);
  const meter = job.state.setup?.meter;
  if (!fact || !meter || !isReported(fact)) {
    return { reason: 'bad-target', text: CANNOT_TAKE_BACK };
  }
  const seq = job.put(seat, {
    type: 'retract',
    target,
    why: 'undo',
    ...(from !== undefined && { from }),
  });
  job.readback(seq, takenBack(searchFactText(fact, meter)));
  if (fact.type === 'move') job.notice('still-turned', stillTurned(movedText(fact.axis, fact.eighths)));
  return;
}

import type { FactOf, SearchFact } from '../model/facts.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { Reading } from '../model/reading.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import { amountWords, senseWord } from './amounts.ts';
import { itemText } from './items.ts';
import { ACCEPTED_ON_TRENDS, LIGHT_SEEN_ONLY } from './looking.ts';
import { readingText } from './readings.ts';

/** "horizontal, a quarter turn clockwise" */
export const movedText = (axis: Axis, eighths: Eighths): string =>
  `${axis}, ${amountWords(eighths)} ${senseWord(eighths)}`;

const acceptedText = (reading: Reading, meter: MeterProfile): string =>
  reading.kind === 'seen' ? ACCEPTED_ON_TRENDS : `accepted at ${readingText(reading, meter)}`;

function pathText({ state, cover }: FactOf<'path'>): string {
  if (state !== 'partial') return `beam ${state}`;
  if (cover?.how !== 'filter') return 'beam half covered';
  return cover.filter === undefined ? 'test filter on' : `${cover.filter} percent test filter on`;
}
const DISTURBED = {
  knocked: 'it was knocked: the search starts again from here',
  'uncounted-turn': 'a turn was not counted: the search starts again from here',
} as const;

const CANNOT = {
  stuck: 'is stuck',
  'end-of-travel': 'is at its end of travel',
  'out-of-reach': 'is out of reach',
  unsaid: 'could not be turned',
} as const;

function cannotText({ why, turn, gain }: FactOf<'cannot'>): string {
  if (gain) return 'the gain could not be set';
  if (why === 'unsaid' && !turn) return 'it could not be done';
  return `the ${turn ? `${turn.axis} ` : ''}adjuster ${CANNOT[why]}`;
}

function gainText({ change, to }: FactOf<'gain'>): string {
  if (change === 'full') return 'gain full';
  return to === undefined ? `gain ${change === 'set' ? 'changed' : change}` : `gain ${change} to ${to}`;
}

/** A fact of the search in a few words, lower case, no full stop. */
export function searchFactText(fact: SearchFact, meter: MeterProfile): string {
  switch (fact.type) {
    case 'reading':
      return readingText(fact.reading, meter);
    case 'trend':
      return fact.first ? LIGHT_SEEN_ONLY : fact.trend;
    case 'move':
      return movedText(fact.axis, fact.eighths);
    case 'gain':
      return gainText(fact);
    case 'path':
      return pathText(fact);
    case 're-aimed':
      return 're-aimed by eye';
    case 'disturbed':
      return DISTURBED[fact.why];
    case 'choice':
      return `go on with the ${fact.axis}`;
    case 'cannot':
      return cannotText(fact);
    case 'checked':
      return 'causes checked';
    case 'confirm':
      return `entry ${fact.target} confirmed`;
    case 'item':
      return itemText(fact);
    case 'panel':
      return `panel shows ${fact.shows}`;
    case 'retract':
      return `entry ${fact.target} taken back`;
    case 'accept':
      return acceptedText(fact.reading, meter);
  }
}

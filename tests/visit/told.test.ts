import { describe, expect, it } from 'vitest';
import { namesNobody } from '../../src/visit/told.ts';

describe('who was told', () => {
  it.each([
    'nobody',
    'Nobody.',
    'no one',
    'No-one yet',
    'noone',
    'none',
    'told nobody',
    'I told no one',
    "we've told nobody",
    'nobody at all',
    'nobody here',
    'nobody was told',
    'n/a',
    'N.A.',
    'na',
    '-',
    '—',
    '...',
    '?',
    'nil',
    'no',
    'not told',
    'not yet',
    'not applicable',
    'nothing',
    "didn't tell anyone",
    'I have not told anybody',
    'x',
    'xxx',
  ])('%s names nobody', (note) => expect(namesNobody(note)).toBe(true));

  it.each([
    'the control room',
    'Nobody Smith',
    'Mr Noone at the desk',
    'None of the guards but Ana',
    'reception, not the guard',
    'Naomi',
    'control room 2',
    '112',
    'Nora',
    'Xaver',
    'Никита',
    '王',
    'site manager, no one else there',
  ])('%s names somebody', (note) => expect(namesNobody(note)).toBe(false));
});

import { describe, expect, it } from 'vitest';
import { byText } from '../../src/phrases/entry-rows.ts';
import { momentsIn } from '../../src/report/moments.ts';
import { namedEntries } from '../../src/report/named-entries.ts';
import { COUNTS } from '../conversation/table.ts';
import { playedVisit } from '../findings/site.ts';

describe('the entries named on a page', () => {
  it('are by the person who was in the seat then, also after another took it over', () => {
    const entries = playedVisit(['takeover']);
    const mentions = entries.map(({ seq }) => `#${seq}`).join(' ');
    const block = { kind: 'list', title: 'All', empty: '', items: [{ lead: '', text: mentions }] } as const;
    const [named] = namedEntries([block], entries, COUNTS, momentsIn('UTC'));
    const by = new Set(named?.kind === 'entries' ? named.rows.map(({ who }) => who) : []);
    expect([...by].sort()).toEqual([
      'A. Example, panel',
      'B. Example, emitter',
      'C. Example, emitter',
      'Ladderline',
      // Who opened the job had not sat down yet.
      'Panel',
      'S. Example, desk',
    ]);
  });

  it('are by the seat where nobody was named, and by nobody where the program did it', () => {
    expect(byText('panel', undefined)).toBe('Panel');
    expect(byText('supervisor', undefined)).toBe('Desk');
    expect(byText('server', { name: 'A. Example' })).toBe('Ladderline');
  });
});

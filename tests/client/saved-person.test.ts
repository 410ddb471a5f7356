import { describe, expect, it } from 'vitest';
import { memoryStorage } from '../../client/browser/storage.ts';
import { NOBODY, ownPerson, personIn, rememberPerson } from '../../client/people/saved-person.ts';
import { phoneId } from '../../client/people/sitter.ts';
import { Person, PhoneId } from '../../src/model/person.ts';

describe('who is at a phone', () => {
  it('is typed once, and nobody before that', () => {
    const storage = memoryStorage();
    expect(ownPerson(storage)).toEqual(NOBODY);
    rememberPerson(storage, { name: ' A. Example ', firm: 'Larkmoor', competence: '' });
    expect(ownPerson(storage)).toEqual({ name: 'A. Example', firm: 'Larkmoor', competence: '' });
    rememberPerson(storage, NOBODY);
    expect(ownPerson(storage)).toEqual(NOBODY);
  });

  it.each([null, 7, 'A. Example', [], { name: 7 }, { name: '\u0000' }, { firm: 'Larkmoor' }])(
    'is nobody where %j is kept',
    (kept) => {
      const storage = memoryStorage();
      storage.write('person', kept);
      expect(ownPerson(storage)).toEqual(NOBODY);
    },
  );

  it.each([
    ['no name', { ...NOBODY, firm: 'Larkmoor' }, undefined],
    ['a name alone', { ...NOBODY, name: 'A. Example' }, { name: 'A. Example' }],
    [
      'what nobody sees in a pasted name',
      { ...NOBODY, name: '\u202eA.\u0000 Example\n' },
      { name: 'A. Example' },
    ],
    ['only what nobody sees', { ...NOBODY, name: '\u200e\t' }, undefined],
    ['too long a name', { ...NOBODY, name: 'x'.repeat(81) }, { name: 'x'.repeat(80) }],
  ])('with %s never stops the work', (_, typed, person) => {
    expect(personIn(typed)).toEqual(person);
    if (person) expect(Person.safeParse(personIn(typed)).success).toBe(true);
  });

  it('has a phone with an id of its own, which stays', () => {
    const storage = memoryStorage();
    const id = phoneId(storage);
    expect(PhoneId.safeParse(id).success).toBe(true);
    expect(phoneId(storage)).toBe(id);
    expect(phoneId(memoryStorage())).not.toBe(id);
  });
});

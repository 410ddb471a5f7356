import { useState } from 'preact/hooks';
import { browserStorage } from '../browser/storage.ts';
import { ownPerson, type TypedPerson } from './saved-person.ts';

/** Who is at this phone, in a form that begins with who it was last time. */
export function usePerson(): { typed: TypedPerson; put: (typed: TypedPerson) => void } {
  const [typed, put] = useState(() => ownPerson(browserStorage));
  return { typed, put };
}

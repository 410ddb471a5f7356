import { useState } from 'preact/hooks';
import type { Sitter } from '../../src/protocol/access.ts';
import { deviceName } from '../browser/requests.ts';
import { browserStorage } from '../browser/storage.ts';
import { ownPerson, personIn, phoneId, rememberPerson, type TypedPerson } from './saved-person.ts';

/** Who is at this phone, in a form that begins with who it was last time. */
export function usePerson(): {
  typed: TypedPerson;
  put: (typed: TypedPerson) => void;
  /** Remembers it, and gives what goes to the server with a seat. */
  sitter: () => Sitter;
} {
  const [typed, put] = useState(() => ownPerson(browserStorage));
  const sitter = () => {
    rememberPerson(browserStorage, typed);
    const person = personIn(typed);
    return { device: deviceName(), phone: phoneId(browserStorage), ...(person && { person }) };
  };
  return { typed, put, sitter };
}

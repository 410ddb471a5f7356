import { nanoid } from 'nanoid';
import { PhoneId } from '../../src/model/person.ts';
import type { Sitter } from '../../src/protocol/access.ts';
import { deviceName } from '../browser/requests.ts';
import { browserStorage, type Storage } from '../browser/storage.ts';
import { personIn, rememberPerson, type TypedPerson } from './saved-person.ts';

/** What goes to the server with a seat. Who it is stays on this phone for the next time. */
export function sitterOf(typed: TypedPerson): Sitter {
  rememberPerson(browserStorage, typed);
  const person = personIn(typed);
  return { device: deviceName(), phone: phoneId(browserStorage), ...(person && { person }) };
}

const KEY = 'phone';

/** The id of this phone, made once. */
export function phoneId(storage: Storage): PhoneId {
  const kept = PhoneId.safeParse(storage.read(KEY));
  if (kept.success) return kept.data;
  const id = nanoid();
  storage.write(KEY, id);
  return id;
}

import { hashOf } from '../log/chain.ts';
import type { JobId } from '../model/ids.ts';
import type { PhoneMark } from '../model/person.ts';
import type { Sitter } from './access.ts';

/** Who takes a seat, as it goes into the log of this job: with the job as salt, nobody can follow a phone from log to log. */
export const sittingOf = (
  job: JobId,
  { device, phone, person }: Sitter,
  hash = hashOf,
): Omit<Sitter, 'phone'> & { phone?: PhoneMark } => ({
  device,
  ...(phone && { phone: hash(`${job} ${phone}`).slice(0, 8) }),
  ...(person && { person }),
});

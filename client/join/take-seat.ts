import type { Seat } from '../../src/model/facts.ts';
import { CODE_FORM } from '../../src/phrases/admission.ts';
import { JoinCode } from '../../src/protocol/access.ts';
import { join } from '../browser/job-requests.ts';
import { ApiError } from '../browser/requests.ts';
import { browserStorage } from '../browser/storage.ts';
import type { TypedPerson } from '../people/saved-person.ts';
import { sitterOf } from '../people/sitter.ts';
import { saveSeat } from '../saved/saved-seats.ts';

/** `proof`: of a code that was scanned. */
interface Given {
  code: string;
  proof?: string | undefined;
  typed: TypedPerson;
}

/** Takes the seat that a code is for, and keeps it on this phone. @throws {ApiError} */
export async function takeSeat({ code, proof, typed }: Given): Promise<Seat> {
  const parsed = JoinCode.safeParse(code);
  if (!parsed.success) throw new ApiError(CODE_FORM, true, 'bad-code');
  const { job, seat, token } = await join({ code: parsed.data, ...(proof && { proof }), ...sitterOf(typed) });
  saveSeat(browserStorage, { seat, job, token });
  return seat;
}

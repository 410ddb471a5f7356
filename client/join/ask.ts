import { CALL_FORM } from '../../src/phrases/admission.ts';
import type { Asked } from '../../src/protocol/ask.ts';
import { JobWord } from '../../src/protocol/job-word.ts';
import { askPanel } from '../browser/job-requests.ts';
import { ApiError } from '../browser/requests.ts';
import type { TypedPerson } from '../people/saved-person.ts';
import { sitterOf } from '../people/sitter.ts';

export { askAnswer } from '../browser/job-requests.ts';

/** Asks the panel of the job with this word. @throws {ApiError} */
export async function askIn(word: string, typed: TypedPerson): Promise<Asked> {
  const parsed = JobWord.safeParse(word);
  if (!parsed.success) throw new ApiError(parsed.error.issues[0]?.message ?? CALL_FORM, true);
  return askPanel({ word: parsed.data, ...sitterOf(typed) });
}

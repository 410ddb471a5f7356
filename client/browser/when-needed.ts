import { NO_ANSWER } from '../../src/phrases/requests.ts';
import { ApiError } from './requests.ts';

/** Code of a page that only a press needs: the page is there, and answers, before this has come. */
export function whenNeeded<M>(load: () => Promise<M>) {
  /** @throws {ApiError} where it cannot be fetched */
  const needed = (): Promise<M> =>
    load().catch(() => {
      throw new ApiError(NO_ANSWER);
    });
  /** Begins to fetch it; what fails now is fetched again when it is needed. */
  const ahead = () => void needed().catch(() => undefined);
  return Object.assign(needed, { ahead });
}

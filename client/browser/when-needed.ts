import { NEWER_VERSION, NO_ANSWER } from '../../src/phrases/requests.ts';
import { ApiError } from './requests.ts';

/** The server answers, but has this page's code no more: a newer version was installed while the page was open. */
export class OldPage extends ApiError {
  constructor() {
    super(NEWER_VERSION);
  }
}

/** Code of a page that only a press needs: the page is there, and answers, before this has come. */
export function whenNeeded<M>(load: () => Promise<M>) {
  /** @throws {ApiError} where it cannot be fetched */
  const needed = (): Promise<M> =>
    load().catch(async () => {
      throw (await answers()) ? new OldPage() : new ApiError(NO_ANSWER);
    });
  /** Begins to fetch it; what fails now is fetched again when it is needed. */
  const ahead = () => void load().catch(() => undefined);
  return Object.assign(needed, { ahead });
}

/** Asked below `/api`: what is kept for times without a link answers nothing there. */
const answers = (): Promise<boolean> =>
  fetch('/api/live', { cache: 'no-store' }).then(
    ({ ok }) => ok,
    () => false,
  );

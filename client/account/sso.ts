import { go, linkTo } from '../browser/route.ts';
import { beginSso } from './requests.ts';

/** What is kept in this tab while its person is at the provider: where they were, and whether a new proof was asked for. */
const KEPT = 'ladderline-sso';

interface Left {
  readonly back: string;
  readonly again: boolean;
}

/** Leaves for the provider of the firm. @throws {ApiError} */
export async function leaveToSignIn(again: boolean): Promise<void> {
  const url = await beginSso(again);
  const left: Left = { back: location.pathname + location.hash, again };
  sessionStorage.setItem(KEPT, JSON.stringify(left));
  location.assign(url);
}

/** Once only: a page that is loaded again finds nothing. */
export function takeLeft(): Left | undefined {
  const kept = sessionStorage.getItem(KEPT);
  sessionStorage.removeItem(KEPT);
  return kept === null ? undefined : JSON.parse(kept);
}

/** To the page that the person came from: never to one of another server. */
export const goBack = ({ back }: Left): void => go(/^\/(?![/\\])/.test(back) ? back : linkTo('account', {}));

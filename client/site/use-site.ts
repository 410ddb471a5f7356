import { useEffect, useMemo } from 'preact/hooks';
import type { JobId } from '../../src/model/ids.ts';
import { SiteView } from '../../src/protocol/site.ts';
import { ApiError } from '../browser/requests.ts';
import { browserStorage } from '../browser/storage.ts';
import { saveSite } from '../saved/saved-sites.ts';
import { siteText } from './requests.ts';
import { type Polled, usePolled } from './use-polled.ts';

const LOOK_EVERY_MS = 3_000;

/**
 * The site as its server tells it, looked at every few seconds. A site once seen is kept on this device. `job`:
 * with the pair of this visit alone.
 */
export function useSite(token: string, job?: JobId): Polled<SiteView> {
  const look = useMemo(() => siteReader(token, job), [token, job]);
  const polled = usePolled(look, LOOK_EVERY_MS);
  const site = polled.value?.site;
  useEffect(() => {
    if (site === undefined) return;
    saveSite(browserStorage, { token, site });
    document.title = `${site} · Ladderline`;
  }, [token, site]);
  return polled;
}

/** Hands out the same view, and the same rows in a new view, for as long as they tell the same. */
function siteReader(token: string, job: JobId | undefined): () => Promise<SiteView> {
  let text: string | undefined;
  let view: SiteView | undefined;
  return async () => {
    const came = await siteText(token, job);
    if (view && came === text) return view;
    view = withRowsKept(readView(came), view);
    text = came;
    return view;
  };
}

function readView(text: string): SiteView {
  try {
    return SiteView.parse(JSON.parse(text));
  } catch {
    throw new ApiError('This page cannot read what the server sends. Load the page again.');
  }
}

/** A row that tells the same as before is the same row: the board then draws only what is new. */
export function withRowsKept(view: SiteView, before: SiteView | undefined): SiteView {
  if (!before) return view;
  const known = new Map(before.pairs.map((row) => [row.plan.id, row]));
  const pairs = view.pairs.map((row) => {
    const old = known.get(row.plan.id);
    return old && JSON.stringify(old) === JSON.stringify(row) ? old : row;
  });
  return { ...view, pairs };
}

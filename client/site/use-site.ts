import { useEffect, useMemo } from 'preact/hooks';
import type { JobId } from '../../src/model/ids.ts';
import { unreadableText } from '../../src/phrases/requests.ts';
import { SiteView } from '../../src/protocol/site.ts';
import { ApiError } from '../browser/requests.ts';
import { browserStorage } from '../browser/storage.ts';
import { saveSite } from '../saved/saved-sites.ts';
import { troubledCount } from './live-rows.ts';
import { siteText } from './requests.ts';
import { type Polled, usePolled } from './use-polled.ts';

const LOOK_EVERY_MS = 3_000;
const MINUTE_MS = 60_000;

/** The site, read again every few seconds. This device then remembers it. `job`: with only the pair of this visit. */
export function useSite(token: string, job?: JobId): Polled<SiteView> {
  const look = useMemo(() => siteReader(token, job), [token, job]);
  const polled = usePolled(look, LOOK_EVERY_MS);
  const { value, at } = polled;
  const site = value?.site;
  // With only one pair nobody knows of the others.
  const troubled = value && job === undefined ? troubledCount(value.pairs) : undefined;
  const minute = at === undefined ? undefined : Math.floor(at / MINUTE_MS) * MINUTE_MS;
  useEffect(() => {
    if (site === undefined) return;
    const seen = troubled !== undefined && minute !== undefined && { troubled, seenAt: minute };
    saveSite(browserStorage, { token, site, ...seen });
    document.title = `${site} · Ladderline`;
  }, [token, site, troubled, minute]);
  return polled;
}

/** Gives the same view, and the same rows in a new view, as long as nothing in them has changed. */
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
    throw new ApiError(unreadableText());
  }
}

/** A row with the same content as before is the same object: the board then draws only what is new. */
export function withRowsKept(view: SiteView, before: SiteView | undefined): SiteView {
  if (!before) return view;
  const known = new Map(before.pairs.map((row) => [row.plan.id, row]));
  const pairs = view.pairs.map((row) => {
    const old = known.get(row.plan.id);
    return old && JSON.stringify(old) === JSON.stringify(row) ? old : row;
  });
  return { ...view, pairs };
}

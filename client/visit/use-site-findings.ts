import { useEffect, useState } from 'preact/hooks';
import type { JobId } from '../../src/model/ids.ts';
import type { SiteFindings } from '../../src/protocol/site.ts';
import { siteFindings } from '../site/requests.ts';

/**
 * Findings from the comparison with other pairs, or why they could not be read. Both are missing while it is read.
 */
export interface AcrossSite {
  acrossSite?: SiteFindings['site'];
  trouble?: string;
}

/** `again`: read once more when it changes. */
export function useSiteFindings(token: string, job: JobId, again: number): AcrossSite {
  const [found, setFound] = useState<AcrossSite>({});
  useEffect(() => {
    let wanted = true;
    siteFindings(token, job).then(
      ({ site }) => wanted && setFound({ acrossSite: site }),
      (error: Error) => wanted && setFound((before) => ({ ...before, trouble: error.message })),
    );
    return () => {
      wanted = false;
    };
  }, [token, job, again]);
  return found;
}

import { follow, linkTo } from '../browser/route.ts';
import { Mark } from '../ui/mark.tsx';

/** From every page of a site, back to its board. */
export const SiteMasthead = ({ token, site }: { token: string; site: string }) => (
  <header class="masthead site-masthead">
    <a href={linkTo('board', { token })} class="masthead-home" onClick={follow}>
      <Mark size={40} />
      <span>{site}</span>
    </a>
  </header>
);

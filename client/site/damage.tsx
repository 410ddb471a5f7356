import { damageTitle } from '../../src/phrases/damage.ts';
import type { SiteView } from '../../src/protocol/site.ts';
import { linkTo } from '../browser/route.ts';

/** Logs that fail their check: before anything else on a page of the site. */
export function DamageAlert({ damage, token }: { damage: SiteView['damage']; token: string }) {
  if (!damage) return null;
  return (
    <section class="damage" role="alert">
      <h2>{damageTitle(damage.found.length)}</h2>
      <p>{damage.toDo}</p>
      <ul>
        {damage.found.map(({ pair, job, text }) => (
          <li key={job}>
            {text} {pair !== undefined && <a href={linkTo('visit', { token, job })}>What is left of it</a>}
          </li>
        ))}
      </ul>
    </section>
  );
}

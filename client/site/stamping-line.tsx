import { stampingText } from '../../src/phrases/stamping.ts';
import type { SiteView } from '../../src/protocol/site.ts';
import { moment } from '../browser/times.ts';

/** How it stands with time stamps, where the server asks for them. */
export function StampingLine({ stamping }: Pick<SiteView, 'stamping'>) {
  if (!stamping) return null;
  const isFailing = stamping.failingSince !== undefined;
  return (
    <p class={isFailing ? 'failure' : 'hint'} role={isFailing ? 'alert' : undefined}>
      {stampingText(stamping, moment)}
    </p>
  );
}

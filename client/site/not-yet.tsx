import { MessagePage } from '../ui/message-page.tsx';
import type { Polled } from './use-polled.ts';

/** Until the site has been read once. */
export function NotYet({ site: { trouble, look } }: { site: Polled<unknown> }) {
  if (!trouble) return <p class="loading">Reading the site</p>;
  return (
    <MessagePage title="The site could not be read">
      <p role="alert">{trouble}</p>
      <p>
        <button type="button" class="button main" onClick={look}>
          Try again
        </button>
      </p>
    </MessagePage>
  );
}

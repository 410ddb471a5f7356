import type { ComponentChildren } from 'preact';
import { MessagePage } from './message-page.tsx';

/** What a screen reads from the server before it can be drawn. */
export interface Read<T> {
  /** Undefined until it was read once. */
  value: T | undefined;
  /** Why the last try failed, in words. */
  trouble: string | undefined;
  /** Reads at once. */
  look: () => void;
}

interface Props {
  /** "log", "site". */
  what: string;
  read: Omit<Read<unknown>, 'value'>;
  /** Shown while it is being read, if there is more to say than that. */
  children?: ComponentChildren;
}

/** Shown until a screen has read what it needs. */
export function NotYet({ what, read: { trouble, look }, children }: Props) {
  if (!trouble) return <>{children ?? <p class="loading">Reading the {what}</p>}</>;
  return (
    <MessagePage title={`The ${what} could not be read`}>
      <p role="alert">{trouble}</p>
      <p>
        <button type="button" class="button main" onClick={look}>
          Try again
        </button>
      </p>
    </MessagePage>
  );
}

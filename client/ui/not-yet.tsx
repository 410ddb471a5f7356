import { MessagePage } from './message-page.tsx';

interface Props {
  /** "log", "site". */
  what: string;
  /** Why it could not be read, in words. */
  trouble: string | undefined;
  again: () => void;
}

/** In the place of a page until what it shows has been read once. */
export function NotYet({ what, trouble, again }: Props) {
  if (!trouble) return <p class="loading">Reading the {what}</p>;
  return (
    <MessagePage title={`The ${what} could not be read`}>
      <p role="alert">{trouble}</p>
      <p>
        <button type="button" class="button main" onClick={again}>
          Try again
        </button>
      </p>
    </MessagePage>
  );
}

import { browserStorage } from '../browser/storage.ts';
import { loadNewest } from '../offline/registration.ts';
import { rememberPerson, type TypedPerson } from '../people/saved-person.ts';

interface LoadAgainProps {
  /** To this page, with what was typed here. */
  link: string;
  typed: TypedPerson;
}

/** For a page that is older than its server: the newer one begins with what was typed in this one. */
export const LoadAgain = ({ link, typed }: LoadAgainProps) => (
  <button
    type="button"
    class="button main"
    onClick={() => {
      rememberPerson(browserStorage, typed);
      history.replaceState(null, '', link);
      void loadNewest();
    }}
  >
    Load the page again
  </button>
);

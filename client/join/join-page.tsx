import { useRef, useState } from 'preact/hooks';
import { CODE_LENGTH, JoinCode } from '../../src/protocol/access.ts';
import { ApiError, join } from '../browser/requests.ts';
import { follow, go, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { LanguageChoice } from '../language/language-choice.tsx';
import { PersonForm } from '../people/person-form.tsx';
import { usePerson } from '../people/use-person.ts';
import { saveSeat } from '../saved/saved-seats.ts';
import { Page } from '../ui/page.tsx';
import './join.css';

/** Takes a join code, scanned or typed, and takes the seat it is for. */
export function JoinPage({ code: scanned, proof }: { code: string; proof: string }) {
  const [code, setCode] = useState(scanned.slice(0, CODE_LENGTH + 4));
  const [failure, setFailure] = useState<string>();
  const [busy, setBusy] = useState(false);
  const who = usePerson();
  const box = useRef<HTMLInputElement>(null);

  const submit = async (event: Event) => {
    event.preventDefault();
    const parsed = JoinCode.safeParse(code);
    if (!parsed.success) {
      setFailure(`A code has ${CODE_LENGTH} letters and digits, never 0, O, 1, I or L. Check it again.`);
      box.current?.focus();
      return;
    }
    setBusy(true);
    setFailure(undefined);
    try {
      const { job, seat, token } = await join({
        code: parsed.data,
        // Of the code that was scanned, and of no other.
        ...(proof !== '' && code === scanned && { proof }),
        ...who.sitter(),
      });
      saveSeat(browserStorage, { seat, job, token });
      // The code is used up: it must not stay in the history.
      history.replaceState(null, '', linkTo('home', {}));
      go(linkTo(seat, {}));
    } catch (error) {
      setBusy(false);
      setFailure(error instanceof ApiError ? error.message : `Joining failed: ${error}`);
    }
  };

  return (
    <Page>
      <form class="card join" onSubmit={submit}>
        <h1>Join with the code from the panel</h1>
        <label for="code">Join code</label>
        <input
          id="code"
          ref={box}
          class="join-code"
          value={code}
          autocomplete="off"
          autocapitalize="characters"
          spellcheck={false}
          maxLength={CODE_LENGTH + 4}
          placeholder="ABC 234"
          aria-describedby="code-note"
          onInput={(event) => {
            setCode(event.currentTarget.value.toUpperCase());
            // It was about the code that stood here.
            setFailure(undefined);
          }}
        />
        <p id="code-note" class={failure ? 'failure' : 'hint'} role={failure ? 'alert' : undefined}>
          {failure ?? 'The panel phone shows it in large letters, with a square code to scan.'}
        </p>
        <PersonForm typed={who.typed} onInput={who.put} />
        <button type="submit" class="button main" disabled={busy}>
          {busy ? 'Joining' : 'Join'}
        </button>
        <a class="button" href={linkTo('ask', {})} onClick={follow}>
          No code? Ask the panel
        </a>
      </form>
      <LanguageChoice />
    </Page>
  );
}

import { useRef, useState } from 'preact/hooks';
import { NO_SERVER_MEET } from '../../src/phrases/meeting-title.ts';
import { NO_ANSWER } from '../../src/phrases/requests.ts';
import { CODE_LENGTH } from '../../src/protocol/join-code.ts';
import { ApiError } from '../browser/requests.ts';
import { follow, go, linkTo } from '../browser/route.ts';
import { OldPage, whenNeeded } from '../browser/when-needed.ts';
import { LanguageChoice } from '../language/language-choice.tsx';
import { PersonForm } from '../people/person-form.tsx';
import { usePerson } from '../people/use-person.ts';
import { Foot } from '../ui/foot.tsx';
import { Page } from '../ui/page.tsx';
import { LoadAgain } from './load-again.tsx';
import './join.css';

const joining = whenNeeded(() => import('./take-seat.ts'));

/** Takes a join code, scanned or typed, and takes the seat it is for. */
export function JoinPage({ code: scanned, proof }: { code: string; proof: string }) {
  const [code, setCode] = useState(scanned.slice(0, CODE_LENGTH + 4));
  const [failure, setFailure] = useState<string>();
  const [noServer, setNoServer] = useState(false);
  const [isOld, setOld] = useState(false);
  const [busy, setBusy] = useState(false);
  const who = usePerson();
  const box = useRef<HTMLInputElement>(null);

  // The proof is of the code that was scanned, and of no other.
  const ownProof = code === scanned ? proof : '';
  const submit = async (event: Event) => {
    event.preventDefault();
    setBusy(true);
    setFailure(undefined);
    try {
      const { takeSeat } = await joining();
      const seat = await takeSeat({ code, proof: ownProof, typed: who.typed });
      // The code is used up: it must not stay in the history.
      history.replaceState(null, '', linkTo('home', {}));
      go(linkTo(seat, {}));
    } catch (error) {
      setBusy(false);
      setOld(error instanceof OldPage);
      setNoServer(error instanceof ApiError && error.message === NO_ANSWER);
      setFailure(error instanceof ApiError ? error.message : `Joining failed: ${error}`);
      if (error instanceof ApiError && error.reason === 'bad-code') box.current?.focus();
    }
  };

  return (
    <Page>
      <form class="card join" onSubmit={submit} onFocusIn={joining.ahead}>
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
            if (!isOld) setFailure(undefined);
          }}
        />
        <p id="code-note" class={failure ? 'failure' : 'hint'} role={failure ? 'alert' : undefined}>
          {failure ?? 'The panel phone shows it in large letters, with a square code to scan.'}
        </p>
        <PersonForm typed={who.typed} onInput={who.put} />
        {noServer && (
          <a class="button" href={linkTo('meet', {})} onClick={follow}>
            {NO_SERVER_MEET}
          </a>
        )}
        <a class="button" href={linkTo('ask', {})} onClick={follow}>
          No code? Ask the panel
        </a>
        <Foot>
          {isOld ? (
            <LoadAgain link={linkTo('join', { code, proof: ownProof })} typed={who.typed} />
          ) : (
            <button type="submit" class="button main" disabled={busy}>
              {busy ? 'Joining' : 'Join'}
            </button>
          )}
        </Foot>
      </form>
      <LanguageChoice />
    </Page>
  );
}

import { useEffect, useState } from 'preact/hooks';
import type { AskAnswer, Asked } from '../../src/protocol/ask.ts';
import { ApiError } from '../browser/requests.ts';
import { follow, go, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { OldPage, whenNeeded } from '../browser/when-needed.ts';
import { LanguageChoice } from '../language/language-choice.tsx';
import { PersonForm } from '../people/person-form.tsx';
import { usePerson } from '../people/use-person.ts';
import { saveSeat } from '../saved/saved-seats.ts';
import { Foot } from '../ui/foot.tsx';
import { Page } from '../ui/page.tsx';
import { LoadAgain } from './load-again.tsx';
import '../ui/call-mark.css';
import './join.css';

const LOOK_EVERY_MS = 1_500;

const asking = whenNeeded(() => import('./ask.ts'));

/** Asks the panel for the seat at the emitter, without a code. `word`: of the job, where the link had it. */
export function AskPage({ word: linked }: { word: string }) {
  const [word, setWord] = useState(linked.replace('-', ' '));
  const [failure, setFailure] = useState<string>();
  const [isOld, setOld] = useState(false);
  const [busy, setBusy] = useState(false);
  const [asked, setAsked] = useState<Asked>();
  const who = usePerson();

  const submit = async (event: Event) => {
    event.preventDefault();
    setBusy(true);
    setFailure(undefined);
    try {
      setAsked(await (await asking()).askIn(word, who.typed));
    } catch (error) {
      setOld(error instanceof OldPage);
      setFailure(error instanceof ApiError ? error.message : `Asking failed: ${error}`);
    }
    setBusy(false);
  };
  const over = (why: string) => {
    setAsked(undefined);
    setFailure(why);
  };
  if (asked) return <Waiting asked={asked} onOver={over} />;
  return (
    <Page>
      <form class="card join" onSubmit={submit} onFocusIn={asking.ahead}>
        <h1>Ask the panel</h1>
        <label for="word">Job word</label>
        <input
          id="word"
          class="job-word"
          value={word}
          autocomplete="off"
          autocapitalize="characters"
          spellcheck={false}
          maxLength={20}
          placeholder="KILO 417"
          aria-describedby="word-note"
          onInput={(event) => setWord(event.currentTarget.value.toUpperCase())}
        />
        <p id="word-note" class={failure ? 'failure' : 'hint'} role={failure ? 'alert' : undefined}>
          {failure ?? 'The panel phone shows it below its code. The person there then says yes or no.'}
        </p>
        <PersonForm typed={who.typed} onInput={who.put} />
        <a class="button" href={linkTo('join', {})} onClick={follow}>
          I have a code
        </a>
        <Foot>
          {isOld ? (
            <LoadAgain link={linkTo('ask', { word })} typed={who.typed} />
          ) : (
            <button type="submit" class="button main" disabled={busy}>
              {busy ? 'Asking' : 'Ask to come in'}
            </button>
          )}
        </Foot>
      </form>
      <LanguageChoice />
    </Page>
  );
}

const OVER: Record<Exclude<AskAnswer['state'], 'waiting' | 'admitted'>, string> = {
  'turned-away':
    'The panel said no. Ask only if this is the emitter phone of that job: call the person at the panel.',
  unanswered: 'Nobody at the panel answered in time. Call the person there, then ask again.',
};

/** Until the panel has answered. Both screens show the same mark. */
function Waiting({ asked, onOver }: { asked: Asked; onOver: (why: string) => void }) {
  const [isCutOff, setCutOff] = useState(false);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    let isGone = false;
    const look = async () => {
      try {
        const answer = await (await asking()).askAnswer(asked.asker);
        if (isGone) return;
        setCutOff(false);
        if (answer.state === 'admitted') {
          const { job, seat } = answer;
          saveSeat(browserStorage, { seat, job, token: asked.asker });
          history.replaceState(null, '', linkTo('home', {}));
          return go(linkTo(seat, {}));
        }
        if (answer.state !== 'waiting') return onOver(OVER[answer.state]);
      } catch (error) {
        if (isGone) return;
        if (error instanceof ApiError && error.isFinal) return onOver(error.message);
        setCutOff(true);
      }
      timer = setTimeout(look, LOOK_EVERY_MS);
    };
    look();
    return () => {
      isGone = true;
      clearTimeout(timer);
    };
  }, [asked]);
  return (
    <Page>
      <section class="card join" aria-live="polite">
        <h1>The panel is asked</h1>
        <p class="call-mark" translate={false}>
          {asked.mark}
        </p>
        <p>The panel phone shows the same word and number. Tell the person there what you see.</p>
        <p class={isCutOff ? 'failure' : 'hint'}>
          {isCutOff
            ? 'No link to the server. This page goes on trying.'
            : 'Waiting for yes or no. Keep this page open.'}
        </p>
      </section>
    </Page>
  );
}

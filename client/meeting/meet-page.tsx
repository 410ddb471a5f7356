import { useEffect, useRef, useState } from 'preact/hooks';
import {
  BEGIN_MEETING_AGAIN,
  MAKING_CODE,
  MEET_AT_EMITTER,
  SAME_WIFI,
  SCAN_PANEL,
  SHOW_ANSWER,
} from '../../src/phrases/meeting.ts';
import { go, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { PersonForm } from '../people/person-form.tsx';
import { sitterOf } from '../people/sitter.ts';
import { usePerson } from '../people/use-person.ts';
import { savedSeat, saveSeat } from '../saved/saved-seats.ts';
import { Failure } from '../ui/failure.tsx';
import { Page } from '../ui/page.tsx';
import { CodeBox } from './code-box.tsx';
import { type Answered, answerLine, NotMet } from './line.ts';
import { TakeCode } from './take-code.tsx';
import './meeting.css';

/** At the emitter: takes the code of the panel's phone, shows its own, and waits until the two have met. */
export function MeetPage({ code }: { code: string }) {
  const [answer, setAnswer] = useState<Answered>();
  const [failure, setFailure] = useState<string>();
  const [busy, setBusy] = useState(false);
  const who = usePerson();
  const typed = useRef(who.typed);
  typed.current = who.typed;
  const current = useRef<Answered>(undefined);
  // Who comes back is known at the panel.
  const [isBack] = useState(() => savedSeat(browserStorage, 'emitter')?.here === true);

  const begin = () => {
    current.current?.close();
    setAnswer(undefined);
    setFailure(undefined);
  };
  const take = async (scanned: string) => {
    begin();
    setBusy(true);
    try {
      const made = await answerLine(scanned, () => sitterOf(typed.current));
      current.current = made;
      setAnswer(made);
      setBusy(false);
      const { job, token, title } = await made.seated;
      saveSeat(browserStorage, { seat: 'emitter', job, token, title, here: true });
      history.replaceState(null, '', linkTo('home', {}));
      go(linkTo('emitter', {}));
    } catch (error) {
      begin();
      setBusy(false);
      setFailure(error instanceof NotMet ? error.message : String(error));
    }
  };
  useEffect(() => {
    if (code) void take(code);
    return () => current.current?.close();
  }, []);

  return (
    <Page>
      <section class="card invite meeting">
        <h1>{MEET_AT_EMITTER}</h1>
        {busy && <p class="hint">{MAKING_CODE}</p>}
        {!busy && !answer && (
          <>
            <p>{SCAN_PANEL}</p>
            <TakeCode onCode={take} />
          </>
        )}
        <Failure text={failure} />
        {answer && (
          <>
            <p>{SHOW_ANSWER}</p>
            <CodeBox code={answer.code} />
            <button type="button" class="button" onClick={begin}>
              {BEGIN_MEETING_AGAIN}
            </button>
          </>
        )}
        <p class="hint">{SAME_WIFI}</p>
        {!isBack && <PersonForm typed={who.typed} onInput={who.put} />}
      </section>
    </Page>
  );
}

import { useEffect, useRef, useState } from 'preact/hooks';
import {
  BEGIN_MEETING_AGAIN,
  HAVE_MET,
  MAKING_CODE,
  MEET_AT_PANEL,
  REACHING,
  SAME_WIFI,
  SHOW_OFFER,
  THEN_SCAN,
} from '../../src/phrases/meeting.ts';
import { MEET_AGAIN } from '../../src/phrases/meeting-title.ts';
import { linkTo } from '../browser/route.ts';
import { Failure } from '../ui/failure.tsx';
import { Sheet } from '../ui/sheet.tsx';
import { CodeBox } from './code-box.tsx';
import { NotMet, type Offered, offerLine } from './line.ts';
import { TakeCode } from './take-code.tsx';
import './meeting.css';

interface Props {
  job: string;
  as?: 'h1' | 'h2' | undefined;
}

/** While the other phone is away: a line that broke comes back only by a new meeting. In one file with the card, which it shows. */
export function MeetAgain({ job, isAway }: { job: string; isAway: boolean }) {
  const [open, setOpen] = useState(false);
  useEffect(() => {
    if (!isAway) setOpen(false);
  }, [isAway]);
  if (open)
    return (
      <Sheet title={MEET_AGAIN} onClose={() => setOpen(false)}>
        <MeetCard job={job} />
      </Sheet>
    );
  return isAway ? (
    <button type="button" class="button main" onClick={() => setOpen(true)}>
      {MEET_AGAIN}
    </button>
  ) : null;
}

/** At the panel, where this phone keeps the record: how the phone at the emitter comes to it without a server. */
export function MeetCard({ job, as: Title = 'h2' }: Props) {
  const [offer, setOffer] = useState<Offered>();
  const [stage, setStage] = useState<'codes' | 'reaching' | 'met' | 'failed'>('codes');
  const [failure, setFailure] = useState<string>();
  const current = useRef<Offered>(undefined);
  const fail = (error: unknown) => setFailure(error instanceof NotMet ? error.message : String(error));

  const begin = async () => {
    current.current?.close();
    setOffer(undefined);
    setFailure(undefined);
    setStage('codes');
    try {
      current.current = await offerLine(job);
      setOffer(current.current);
    } catch (error) {
      fail(error);
      setStage('failed');
    }
  };
  useEffect(() => {
    void begin();
    return () => current.current?.close();
  }, []);

  const take = async (code: string) => {
    setFailure(undefined);
    setStage('reaching');
    try {
      await offer?.accept(code);
      setStage('met');
    } catch (error) {
      fail(error);
      // A code that is none leaves the offer as it was.
      setStage(offer?.isOpen() ? 'codes' : 'failed');
    }
  };

  return (
    <section class="card invite meeting">
      <Title>{stage === 'met' ? HAVE_MET : MEET_AT_PANEL}</Title>
      {stage === 'codes' && !offer && <p class="hint">{MAKING_CODE}</p>}
      {stage === 'codes' && offer && (
        <>
          <p>{SHOW_OFFER}</p>
          <CodeBox code={new URL(linkTo('meet', { code: offer.code }), location.origin).href} />
          <p>{THEN_SCAN}</p>
          <TakeCode onCode={take} />
          <p class="hint">{SAME_WIFI}</p>
        </>
      )}
      {stage === 'reaching' && <p role="status">{REACHING}</p>}
      <Failure text={failure} />
      {stage === 'failed' && (
        <button type="button" class="button main" onClick={begin}>
          {BEGIN_MEETING_AGAIN}
        </button>
      )}
    </section>
  );
}

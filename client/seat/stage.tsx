import { isOnePhone } from '../../src/model/alone.ts';
import type { Seat } from '../../src/model/facts.ts';
import { isMine } from '../../src/model/mine.ts';
import type { Placed } from '../../src/model/placed.ts';
import { type Answer, answersTo, answersToQuestion } from '../../src/phrases/answers.ts';
import { WORDS } from '../../src/phrases/buttons.ts';
import { receiptText } from '../../src/phrases/presence.ts';
import {
  Face,
  HeldFace,
  PausedFace,
  QueryFace,
  RestingFace,
  StoppedFace,
  UnsureFace,
  UntaughtFace,
} from '../instruction/face.tsx';
import { useKeptPages } from '../offline/registration.ts';
import type { Room } from './use-room.ts';

/** What the stage shows: one thing only, the most urgent. */
export function Stage({ room, compact = false }: { room: Room; compact?: boolean }) {
  const { job, order, now, saved, link } = room;
  const { kept } = useKeptPages();
  if (order.kind === 'unsure')
    return (
      <UnsureFace
        instruction={order.instruction}
        waiting={link.outbox.length}
        pagesNotKept={kept === 'no'}
        serverStops={link.serverStops}
        compact={compact}
      />
    );
  if (job.stopped) return <StoppedFace compact={compact} />;
  if (job.held) return <HeldFace compact={compact} isBack={job.seats.emitter?.online ?? false} />;
  if (job.paused) return <PausedFace compact={compact} />;
  const query = queryHere(room);
  if (query) return <QueryFace text={query.text} compact={compact} />;
  if (order.kind === 'none')
    return <RestingFace waitsFor={missingSeat(link.presence, job.seats)} compact={compact} />;
  if (isUntaught(room)) return <UntaughtFace compact={compact} />;
  const other: Seat = saved.seat === 'panel' ? 'emitter' : 'panel';
  return (
    <Face
      instruction={order.instruction}
      seat={saved.seat}
      alone={job.setup?.alone}
      now={now}
      compact={compact}
      otherIsAway={!isOnePhone(job.setup?.alone) && link.presence?.[other] === 'away'}
      mounting={job.mounting}
      receipt={receiptOf(room, order.instruction)}
    />
  );
}

/** A phone is to tell what the light does, and nobody has shown it what that looks or sounds like. */
const isUntaught = ({ job, order }: Room): boolean =>
  job.setup?.alone === 'sensing' &&
  job.taughtAt === undefined &&
  order.kind !== 'none' &&
  order.instruction?.advice.action.kind === 'read';

/** At the panel, of an order that the ladder must hear. On one phone, in practice or alone, there is no other phone. */
function receiptOf(
  { saved, link, job, inPage }: Room,
  { seq, advice }: Placed<'instruction'>,
): { text: string; reached: boolean } | undefined {
  if (
    saved.seat !== 'panel' ||
    inPage ||
    isOnePhone(job.setup?.alone) ||
    advice.to === 'panel' ||
    link.presence?.emitter !== 'online'
  )
    return;
  const how = link.receipt?.instruction === seq ? link.receipt.how : undefined;
  return { text: receiptText(how), reached: how !== undefined };
}

function missingSeat(presence: Room['link']['presence'], seats: Room['job']['seats']): Seat | undefined {
  if (!seats.panel || presence?.panel === 'empty') return 'panel';
  return !seats.emitter || presence?.emitter === 'empty' ? 'emitter' : undefined;
}

/** The open question, if it is about words of this seat and has answers to choose from. */
function queryHere({ job: { query }, link, saved }: Room): Placed<'query'> | undefined {
  const asked = query?.question && link.entries[query.of]?.fact;
  return asked && 'seat' in asked && asked.seat === saved.seat ? query : undefined;
}

/** The answers to what is on the stage, for the person in this seat. */
export function stageAnswers(room: Room): Answer[] {
  const { job, order, saved } = room;
  if (job.stopped) return [{ label: 'Start again', words: WORDS.start, main: true }];
  if (job.held && saved.seat === 'panel') return [];
  if (job.paused) return [{ label: job.held ? 'Ready' : 'Go on', words: WORDS.goOn, main: true }];
  const meter = job.setup?.meter;
  if (!meter) return [];
  const question = queryHere(room)?.question;
  if (question) return answersToQuestion(question, meter);
  if (order.kind === 'none') {
    return job.accepted || !job.seats.emitter ? [] : [{ label: 'Go on', words: WORDS.goOn, main: true }];
  }
  const advice = order.instruction?.advice;
  const mine = advice && isMine(advice, saved.seat, job.setup?.alone);
  // There the propped phone answers, and nobody else.
  const isTold = job.setup?.alone === 'sensing' && advice?.action.kind === 'read';
  return mine && !isTold ? answersTo(advice.action, meter) : [];
}

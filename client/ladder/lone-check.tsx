import { useEffect, useRef, useState } from 'preact/hooks';
import type { Entry } from '../../src/model/entry.ts';
import type { FactOf } from '../../src/model/facts.ts';
import { LONE, loneAnswered, loneMessage, loneRemark } from '../../src/phrases/lone-check.ts';
import { type LoneCheck as Check, loneCheck, saidAfterMs } from '../../src/visit/lone-check.ts';
import { browserStorage } from '../browser/storage.ts';
import { type LoneWorker, loneWorker } from '../saved/lone-worker.ts';
import type { Room } from '../seat/use-room.ts';

const MINUTE_MS = 60_000;

/** A propped phone read it, heard it or saw it. */
const isByPhone = ({ camera, sensor }: FactOf<'said'>): boolean => (camera ?? sensor) !== undefined;

/**
 * Whether an entry shows that the person on the ladder is there. What a propped phone tells by itself does not, nor what a colleague
 * says at the panel.
 */
const isFromPerson =
  (isAlone: boolean) =>
  ({ actor, fact }: Entry): boolean =>
    (actor === 'emitter' || (isAlone && actor === 'panel')) && fact.type === 'said' && !isByPhone(fact);

/** Asks the person on the ladder whether they are still there; see `loneCheck`. Nothing while no time is set. */
export function LoneCheck({ room }: { room: Room }) {
  const [lone] = useState(() => loneWorker(browserStorage));
  if (lone.minutes === undefined || room.job.accepted || room.inPage) return null;
  return <Checked room={room} lone={lone} minutes={lone.minutes} />;
}

function Checked({ room, lone, minutes }: { room: Room; lone: LoneWorker; minutes: number }) {
  const { link, speaker } = room;
  const isAlone = room.job.setup?.alone !== undefined;
  const now = Date.now();
  const [touchedAt, setTouchedAt] = useState(now);
  const heardAt = useRef({ entries: -1, at: now });
  // By this phone's clock: it also asks where there is no link.
  const said = link.entries.filter(isFromPerson(isAlone)).length;
  if (said !== heardAt.current.entries) heardAt.current = { entries: said, at: now };
  const speaking = room.talk.handsFree === 'hearing' || room.talk.state.phase === 'talking';
  if (speaking) heardAt.current.at = now;
  useEffect(() => {
    // A key of the check itself is pressed by whoever finds the phone: only its own says that the person is there.
    const touch = ({ target }: Event) => {
      if (!(target instanceof Element) || !target.closest('.lone-check')) setTouchedAt(Date.now());
    };
    addEventListener('pointerdown', touch, true);
    return () => removeEventListener('pointerdown', touch, true);
  }, []);
  const last = Math.max(touchedAt, heardAt.current.at);
  const check = loneCheck(last, now, minutes * MINUTE_MS);

  const asked = useRef<{ check: Check; since: number; times: number }>(undefined);
  useEffect(() => {
    if (check === 'quiet') {
      if (asked.current?.check === 'nobody-answers') room.post({ t: 'remark', text: loneAnswered(isAlone) });
      asked.current = undefined;
      return;
    }
    if (asked.current?.check !== check) {
      asked.current = { check, since: now, times: 0 };
      if (check === 'nobody-answers') room.post({ t: 'remark', text: loneRemark(minutes, isAlone) });
    }
    const { since, times } = asked.current;
    if (now - since < saidAfterMs(times)) return;
    asked.current.times += 1;
    speaker.say(WORDS[check], check === 'ask' ? 'act' : 'stop', check !== 'ask');
  }, [check, now]);

  if (check === 'quiet') return null;
  const title = room.saved.title ?? '';
  const message = loneMessage(title, minutes, lone.agreed, isAlone);
  const to = lone.number.replace(/[^\d+]/g, '');
  return (
    <section class="lone-check" role="alertdialog" aria-label={LONE.heading} data-check={check}>
      <p class="lone-words">{WORDS[check]}</p>
      {check === 'nobody-answers' && (
        <>
          <p class="lone-agreed" translate={false}>
            {lone.agreed}
          </p>
          {to && (
            <a class="button main" href={`tel:${to}`}>
              {LONE.call} {to}
            </a>
          )}
          {to && (
            <a class="button main" href={`sms:${to}?body=${encodeURIComponent(message)}`}>
              {LONE.text}
            </a>
          )}
          {'share' in navigator && (
            <button
              type="button"
              class="button"
              onClick={() => void navigator.share({ text: message }).catch(() => undefined)}
            >
              {LONE.share}
            </button>
          )}
        </>
      )}
      <button type="button" class="button main huge" onClick={() => setTouchedAt(Date.now())}>
        {LONE.here}
      </button>
    </section>
  );
}

const WORDS = { ask: LONE.ask, 'ask-louder': LONE.askLouder, 'nobody-answers': LONE.nobody } as const;

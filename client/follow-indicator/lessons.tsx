import { useState } from 'preact/hooks';
import type { Moment } from '../../src/indicator/watch.ts';
import {
  BEGIN_AFTER,
  BEGIN_TO_FOLLOW,
  DELAYS,
  LEARNING,
  LEARNT,
  LESSONS,
  ONCE_MORE,
  SHOW_ME,
  UNTAUGHT,
  waitsText,
} from '../../src/phrases/follow-indicator.ts';
import { goesByText } from '../../src/phrases/indicator.ts';
import { Choice } from '../ui/field.tsx';
import { intoSight } from '../ui/into-sight.ts';
import type { Following } from './use-following.ts';

/** None, some, plenty: each is shown once, and can be shown again. */
export function Lessons<M extends Moment>({
  following,
  isReady,
}: {
  following: Following<M>;
  isReady: boolean;
}) {
  const [delay, setDelay] = useState('0');
  const { learning, learnt, profile } = following;
  const seconds = DELAYS[Number(delay)]?.seconds ?? 0;
  return (
    <>
      {/* First, and brought into sight: whoever taught it last pressed a key further down. */}
      {typeof profile === 'string' && (
        <p class="watch-fault" role="alert" ref={intoSight}>
          {UNTAUGHT[profile]}
        </p>
      )}
      {typeof profile === 'object' && (
        <>
          <p class="watch-hint">{goesByText(profile)}</p>
          <button type="button" class="button main" ref={intoSight} onClick={following.begin}>
            {BEGIN_TO_FOLLOW}
          </button>
        </>
      )}
      <Choice
        label={BEGIN_AFTER}
        value={delay}
        options={DELAYS.map(({ label }, i) => ({ value: String(i), label }))}
        onInput={setDelay}
      />
      <ol class="lessons">
        {LESSONS.map((lesson) => {
          const { title, how, key } = SHOW_ME[lesson];
          const isNow = learning?.lesson === lesson;
          return (
            <li key={lesson} data-state={isNow ? 'now' : learnt.has(lesson) ? 'learnt' : 'open'}>
              <h2>{title}</h2>
              <p>{how}</p>
              {isNow && <p aria-live="polite">{waits(learning.from)}</p>}
              {!learning && learnt.has(lesson) && <p>{LEARNT}</p>}
              {!learning && isReady && (
                <button type="button" class="button" onClick={() => following.learn(lesson, seconds)}>
                  {key}
                </button>
              )}
            </li>
          );
        })}
      </ol>
      {!learning && learnt.size > 0 && (
        <button type="button" class="button" onClick={following.again}>
          {ONCE_MORE}
        </button>
      )}
    </>
  );
}

function waits(from: number): string {
  const left = Math.ceil((from - performance.now()) / 1_000);
  return left > 0 ? waitsText(left) : LEARNING;
}

import { useState } from 'preact/hooks';
import type { Action } from '../../src/model/advice.ts';
import { hasNoNumbers, isOnePhone } from '../../src/model/alone.ts';
import { WORDS } from '../../src/phrases/buttons.ts';
import { HOW_MOUNTED } from '../../src/phrases/mounting.ts';
import { STILL_THERE } from '../../src/phrases/still-there.ts';
import { TalkButton } from '../audio/talk-button.tsx';
import { HandOverButton, HandOverSheet } from '../hand-over/hand-over-sheet.tsx';
import { canFail, canGoWrong } from '../instruction/face.tsx';
import { AnswerButton } from '../seat/answer-button.tsx';
import { DeskWork } from '../seat/desk-work.tsx';
import { LastReading } from '../seat/last-reading.tsx';
import { Menu } from '../seat/menu.tsx';
import { MountingKeys } from '../seat/mounting-page.tsx';
import { News } from '../seat/news.tsx';
import { Photos, PhotosButton, useSendPhotos } from '../seat/photos-button.tsx';
import { Stage, stageAnswers } from '../seat/stage.tsx';
import { Strip } from '../seat/strip.tsx';
import type { Room } from '../seat/use-room.ts';
import { lazy } from '../ui/lazy.tsx';
import { Sheet } from '../ui/sheet.tsx';
import './ladder.css';

/** Only in practice. */
const DrawnHands = lazy(() => import('../practice/drawn-hands.tsx').then((m) => m.DrawnHands));

/** Only without a server. */
const LineLost = lazy(
  () => import('../meeting/line-lost.tsx').then((m) => m.LineLost),
  () => null,
);

/** Nothing is shown of it. */
const HeadsetKeys = lazy(
  () => import('./headset-keys.tsx').then((m) => m.HeadsetKeys),
  () => null,
);
/** Nothing is shown until it asks. */
const LoneCheck = lazy(
  () => import('./lone-check.tsx').then((m) => m.LoneCheck),
  () => null,
);
const LoneForm = lazy(() => import('../alone/lone-form.tsx').then((m) => m.LoneForm));

/** Only of a person alone. */
const AtMeter = lazy(() => import('./at-meter.tsx').then((m) => m.AtMeter));
const AcceptSheet = lazy(() => import('../at-meter/accept-sheet.tsx').then((m) => m.AcceptSheet));
const AloneMenu = lazy(() => import('./at-meter.tsx').then((m) => m.AloneMenu));

const AGAIN = { label: 'Say again', words: WORDS.again };
const WAIT = { label: 'Wait', words: WORDS.wait };
const WRONG_WAY = { label: 'Wrong way', words: WORDS.wrongWay };

/** For one gloved hand on a ladder: one instruction, very large, and few big buttons. Of a person alone it is the only screen. */
export function LadderScreen({ room }: { room: Room }) {
  const [sheet, setSheet] = useState<'menu' | 'cannot' | 'hand-over' | 'photos' | 'accept'>();
  const [microphone, setMicrophone] = useState(
    room.job.setup?.alone !== undefined || room.talk.handsFree !== 'off',
  );
  const close = () => setSheet(undefined);
  useSendPhotos(room);
  const press = (words: string) => room.say(words, 'button');
  const { order, job } = room;
  const action = order.kind === 'none' ? undefined : order.instruction?.advice.action;
  const linked = order.kind !== 'unsure';
  const isAlone = isOnePhone(job.setup?.alone);
  const readsNumbers = isAlone && !hasNoNumbers(job.setup?.alone);
  const halted = job.stopped || job.paused;
  return (
    <main class="emitter">
      <Strip room={room} onMenu={() => setSheet('menu')} />
      <div class="emitter-stage" aria-live="polite">
        <Stage room={room} compact={readsNumbers && action?.kind === 'read'} />
      </div>
      <div class="emitter-side">
        {job.setup?.practice && (
          <DrawnHands
            entries={room.link.entries}
            order={order.kind === 'none' ? undefined : order.instruction}
            now={room.now}
            isCalledOut={room.inPage !== undefined}
            onAct={(act) => room.post({ t: 'practise', act })}
          />
        )}
        <News room={room} />
        {room.saved.here && room.saved.seat === 'emitter' && room.link.failures > 0 && <LineLost />}
        <LastReading room={room} />
        <DeskWork room={room} />
        {readsNumbers && <AtMeter room={room} />}
        {microphone && <TalkButton talk={room.talk} speechReady={room.link.speech?.ready ?? false} />}
        <div class="ladder-keys">
          <div class="answer-grid">
            {linked && <AnswerButton room={room} answer={AGAIN} class="button answer" />}
            {linked && !halted && <AnswerButton room={room} answer={WAIT} class="button answer" />}
            {!halted && action && canFail(action) && (
              <button type="button" class="button answer" onClick={() => setSheet('cannot')}>
                Can't
              </button>
            )}
            {!halted && action && canGoWrong(action) && (
              <AnswerButton room={room} answer={WRONG_WAY} class="button answer" />
            )}
          </div>
          <div class="answers">
            {stageAnswers(room).map((answer) => (
              <AnswerButton
                key={answer.label}
                room={room}
                answer={answer}
                class={answer.main ? 'button main answer-main' : 'button answer'}
              />
            ))}
          </div>
        </div>
      </div>
      {microphone && <HeadsetKeys room={room} again={AGAIN.words} />}
      {/* What was set in the menu holds once it is closed. */}
      {!job.setup?.practice && <LoneCheck key={sheet ?? 'none'} room={room} />}
      {sheet === 'menu' && (
        <Menu room={room} onClose={close}>
          {isAlone && <AloneMenu room={room} onAccept={() => setSheet('accept')} />}
          <button
            type="button"
            class="button"
            aria-pressed={microphone}
            onClick={() => {
              setMicrophone(!microphone);
              close();
            }}
          >
            {microphone ? 'Answer with buttons only' : 'Answer by voice too'}
          </button>
          {!job.setup?.practice && (
            <details class="more">
              <summary>{HOW_MOUNTED}</summary>
              <MountingKeys
                now={job.mounting}
                onPick={(mounting) => {
                  room.post({ t: 'mounted', mounting });
                  close();
                }}
              />
            </details>
          )}
          {!job.setup?.practice && <StillThere />}
          <HandOverButton room={room} onOpen={() => setSheet('hand-over')} />
          <PhotosButton room={room} onOpen={() => setSheet('photos')} />
        </Menu>
      )}
      {sheet === 'hand-over' && <HandOverSheet room={room} onClose={close} />}
      {sheet === 'photos' && <Photos room={room} onClose={close} />}
      {sheet === 'accept' && <AcceptSheet room={room} onClose={close} />}
      {sheet === 'cannot' && action && <Cannot order={action} onClose={close} onPick={press} />}
    </main>
  );
}

/** For two as well: whoever is on the ladder may want to be asked. */
function StillThere() {
  const [open, setOpen] = useState(false);
  return (
    <details class="more" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{STILL_THERE}</summary>
      {open && <LoneForm />}
    </details>
  );
}

const AT_A_SCREW = [
  { label: 'The screw is stuck', words: WORDS.stuck },
  { label: 'End of its travel', words: WORDS.endOfTravel },
];
const ANYWHERE = [
  { label: 'Out of my reach', words: WORDS.outOfReach },
  { label: 'Something else', words: WORDS.cannot },
];

const isAtScrew = ({ kind }: Action): boolean => kind === 'turn' || kind === 'gain';

interface CannotProps {
  order: Action;
  onClose: () => void;
  onPick: (words: string) => void;
}

/** Only reasons that fit the order: where nothing is turned, no screw is stuck. */
const Cannot = ({ order, onClose, onPick }: CannotProps) => (
  <Sheet title="Why not?" onClose={onClose}>
    {[...(isAtScrew(order) ? AT_A_SCREW : []), ...ANYWHERE].map(({ label, words }) => (
      <button
        key={words}
        type="button"
        class="button main"
        onClick={() => {
          onPick(words);
          onClose();
        }}
      >
        {label}
      </button>
    ))}
  </Sheet>
);

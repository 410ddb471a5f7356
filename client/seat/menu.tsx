import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { isOnePhone } from '../../src/model/alone.ts';
import type { Seat } from '../../src/model/facts.ts';
import { LEAVES_HERE, STAYS_AT_PANEL } from '../../src/phrases/brought.ts';
import { WORDS } from '../../src/phrases/buttons.ts';
import { NEW_VERSION_WAITS, PAGES_KEPT, PAGES_NOT_KEPT, speechKeptText } from '../../src/phrases/offline.ts';
import { personText } from '../../src/phrases/people.ts';
import { END_PRACTICE, LEAVE_PRACTICE } from '../../src/phrases/practice-band.ts';
import type { TalkView } from '../audio/talk-view.ts';
import { linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { chooseTheme, savedTheme, THEMES, type Theme } from '../browser/theme.ts';
import { LanguageChoice } from '../language/language-choice.tsx';
import { isKept } from '../offline/kept-files.ts';
import { useKeptPages } from '../offline/registration.ts';
import { PersonForm } from '../people/person-form.tsx';
import { NOBODY, ownPerson, personIn, rememberPerson, type TypedPerson } from '../people/saved-person.ts';
import { jobsHere } from '../saved/jobs-here.ts';
import { forgetSeat, keepsRecord } from '../saved/saved-seats.ts';
import { NoVoice } from '../speak/no-voice.tsx';
import type { SpeakerView } from '../speak/use-speaker.ts';
import { canVibrate } from '../speak/voice.ts';
import { lazy } from '../ui/lazy.tsx';
import { Sheet } from '../ui/sheet.tsx';
import { CautionList } from './cautions.tsx';
import { InviteCard } from './invite.tsx';
import { KeepSound } from './keep-sound.tsx';
import { OwnVoice } from './own-voice.tsx';
import type { Room } from './use-room.ts';

/** Only where this phone keeps the record alone. */
const KeptHere = lazy(() => import('../here/bring-button.tsx').then((m) => m.KeptHere));

interface MenuProps {
  room: Room;
  onClose: () => void;
  /** What only one of the seats has. */
  children?: ComponentChildren;
}

export function Menu({ room, onClose, children }: MenuProps) {
  const { job, saved } = room;
  const here = keepsRecord(saved) && jobsHere(browserStorage).find((kept) => kept.job === saved.job);
  const stop = () => {
    room.say(job.stopped ? WORDS.start : WORDS.stop, 'button');
    onClose();
  };
  return (
    <Sheet title={room.saved.title ?? 'This job'} onClose={onClose}>
      {room.endPractice && (
        <button type="button" class="button main" onClick={room.endPractice}>
          {END_PRACTICE}
        </button>
      )}
      {children}
      {here && <KeptHere kept={here} onBrought={() => location.reload()} />}
      <button type="button" class={job.stopped ? 'button main' : 'button danger'} onClick={stop}>
        {job.stopped ? 'Start again' : 'Stop the job'}
      </button>
      <AtThisPhone room={room} onDone={onClose} />
      <Remark room={room} onDone={onClose} />
      <LanguageChoice />
      <Brightness />
      <VoiceSettings speaker={room.speaker} />
      <WithoutLink talk={room.talk} />
      {!room.inPage && <OwnVoice talk={room.talk} canHear={room.link.speech?.ready ?? false} />}
      <KeepSound room={room} />
      {!room.inPage && !isOnePhone(job.setup?.alone) && <NewPhone room={room} />}
      <h3>Cautions</h3>
      <CautionList setup={job.setup} />
      <Leave room={room} />
    </Sheet>
  );
}

function Remark({ room, onDone }: { room: Room; onDone: () => void }) {
  const [text, setText] = useState('');
  const submit = (event: Event) => {
    event.preventDefault();
    if (text.trim() === '') return;
    room.post({ t: 'remark', text: text.trim() });
    onDone();
  };
  return (
    <form class="remark" onSubmit={submit}>
      <label for="remark">Remark for the record</label>
      <textarea
        id="remark"
        rows={2}
        maxLength={2000}
        value={text}
        placeholder="The bracket is loose on its upper bolt."
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <button type="submit" class="button" disabled={text.trim() === ''}>
        Keep the remark
      </button>
    </form>
  );
}

/** Who is at this phone, for the record; for a phone that is handed on, or was taken without a name. */
function AtThisPhone({ room, onDone }: { room: Room; onDone: () => void }) {
  const { person } = room.job.seats[room.saved.seat] ?? {};
  const [typed, setTyped] = useState<TypedPerson>();
  if (!typed) {
    return (
      <div class="at-phone">
        <h3>At this phone</h3>
        <p>{personText(person)}</p>
        <button
          type="button"
          class="button"
          onClick={() => setTyped(person ? NOBODY : ownPerson(browserStorage))}
        >
          {person ? 'Somebody else is here now' : 'Give a name'}
        </button>
      </div>
    );
  }
  const submit = (event: Event) => {
    event.preventDefault();
    rememberPerson(browserStorage, typed);
    const named = personIn(typed);
    room.post({ t: 'person', ...(named && { person: named }) });
    room.talk.forgetVoice();
    onDone();
  };
  return (
    <form class="at-phone" onSubmit={submit}>
      <PersonForm typed={typed} onInput={setTyped} open />
      <button type="submit" class="button">
        Keep for the record
      </button>
    </form>
  );
}

/** For a phone that is broken or flat, or must be changed: another phone takes its seat, and the log says so. */
function NewPhone({ room }: { room: Room }) {
  const [seat, setSeat] = useState<Seat>();
  // Without a server only the phone at the panel lets another one in, and only to the emitter.
  const { here } = room.saved;
  if (here && !keepsRecord(room.saved)) return null;
  if (seat) return <InviteCard room={room} seat={seat} />;
  return (
    <div class="new-phone">
      <h3>Another phone takes over</h3>
      <button type="button" class="button" onClick={() => setSeat('emitter')}>
        At the emitter
      </button>
      {!here && (
        <button type="button" class="button" onClick={() => setSeat('panel')}>
          At the panel
        </button>
      )}
    </div>
  );
}

const THEME_NAMES: Readonly<Record<Theme, string>> = {
  system: 'As the phone is set',
  sun: 'In the sun',
  night: 'At night',
};

function Brightness() {
  const [theme, setTheme] = useState(savedTheme);
  return (
    <fieldset class="voice">
      <legend>Screen</legend>
      {THEMES.map((each) => (
        <button
          key={each}
          type="button"
          class="button"
          aria-pressed={each === theme}
          onClick={() => {
            chooseTheme(each);
            setTheme(each);
          }}
        >
          {each === theme ? `${THEME_NAMES[each]}: chosen` : THEME_NAMES[each]}
        </button>
      ))}
    </fieldset>
  );
}

function VoiceSettings({ speaker }: { speaker: SpeakerView }) {
  const { settings, change, test } = speaker;
  const slider = (label: string, key: 'rate' | 'volume', min: number, max: number) => (
    <label class="slider">
      {label}
      <input
        type="range"
        min={min}
        max={max}
        step={0.1}
        value={settings[key]}
        onInput={(event) => change({ ...settings, [key]: Number(event.currentTarget.value) })}
      />
    </label>
  );
  return (
    <fieldset class="voice">
      <legend>Voice of this phone</legend>
      <button
        type="button"
        class="button"
        aria-pressed={!settings.muted}
        onClick={() => change({ ...settings, muted: !settings.muted })}
      >
        {settings.muted ? 'Voice is off. Turn it on' : 'Voice is on. Turn it off'}
      </button>
      {canVibrate() && (
        <button
          type="button"
          class="button"
          aria-pressed={settings.vibrates}
          onClick={() => change({ ...settings, vibrates: !settings.vibrates })}
        >
          {settings.vibrates ? 'Vibration is on. Turn it off' : 'Vibration is off. Turn it on'}
        </button>
      )}
      {slider('Pace', 'rate', 0.7, 1.6)}
      {slider('Loudness', 'volume', 0.1, 1)}
      <button type="button" class="button" disabled={settings.muted} onClick={test}>
        Try the voice
      </button>
      <NoVoice speaker={speaker} />
    </fieldset>
  );
}

/** The model, the voice detector and what runs them; packed as they come. */
const MODEL_MB = 20;

const ON_DEVICE = {
  off: 'Speech on this phone is off. Turn it on',
  loading: 'Speech on this phone is loading',
  ready: 'Speech on this phone is on. Turn it off',
} as const;

/** For halls with a bad link: what this phone can do then, and what it still needs for that. */
function WithoutLink({ talk: { onDevice, setOnDevice } }: { talk: TalkView }) {
  const { kept, newer } = useKeptPages();
  const [model, setModel] = useState(false);
  useEffect(() => void isKept().then(setModel), [onDevice]);
  return (
    <fieldset class="voice">
      <legend>Without a link</legend>
      {kept !== 'not-yet' && <p>{kept === 'yes' ? PAGES_KEPT : PAGES_NOT_KEPT}</p>}
      {newer && <p>{NEW_VERSION_WAITS}</p>}
      <p>{speechKeptText(model, MODEL_MB)}</p>
      <button
        type="button"
        class="button"
        aria-pressed={onDevice !== 'off'}
        onClick={() => setOnDevice(onDevice === 'off')}
      >
        {ON_DEVICE[onDevice]}
      </button>
      <p>While there is no link, this phone then hears you itself, and keeps your words to send later.</p>
    </fieldset>
  );
}

function Leave({ room }: { room: Room }) {
  const [sure, setSure] = useState(false);
  if (room.inPage)
    return (
      <button type="button" class="button" onClick={room.inPage.leave}>
        {LEAVE_PRACTICE}
      </button>
    );
  const leave = () => {
    forgetSeat(browserStorage, room.saved.seat);
    location.assign(linkTo('home', {}));
  };
  return sure ? (
    <div class="leave">
      <p>
        {room.saved.here
          ? keepsRecord(room.saved)
            ? LEAVES_HERE
            : STAYS_AT_PANEL
          : 'The record stays on the server. To come back, this phone needs a new code.'}
      </p>
      <button type="button" class="button danger" onClick={leave}>
        Yes, leave this job
      </button>
    </div>
  ) : (
    <button type="button" class="button" onClick={() => setSure(true)}>
      Leave this job
    </button>
  );
}

import type { Entry } from '../model/entry.ts';
import type { FactOf, Seat } from '../model/facts.ts';
import type { MeterProfile } from '../model/profile.ts';
import { currentPlan } from '../model/written.ts';
import { admittedText, turnedAwayText } from './admission.ts';
import { BROUGHT } from './brought.ts';
import { byCameraText } from './camera.ts';
import { searchFactText } from './facts.ts';
import { namesForgottenLine } from './forgotten.ts';
import { handOverText } from './hand-over.ts';
import { bySensorText } from './indicator.ts';
import { keyWithdrawnText } from './keys.ts';
import { hangsText } from './mounting.ts';
import { personText } from './people.ts';
import { photoLine, removedLine } from './photos.ts';
import { planChangedLine } from './plan-changes.ts';
import { issueClosed } from './readbacks.ts';
import { stepsDefinedText } from './steps.ts';
import { UNHEARD_LINE } from './unheard.ts';
import { unitsChosenText } from './units-chosen.ts';
import { watcherRemarkText } from './watching.ts';

/** How a line of the exchange is shown. */
export type Tone =
  | 'speech'
  | 'fact'
  | 'readback'
  | 'question'
  | 'instruction'
  | 'notice'
  | 'remark'
  | 'event';

export interface Line {
  who: Seat | 'ladderline';
  text: string;
  tone: Tone;
}

const SEAT_NAME: Record<Seat, string> = { panel: 'Panel', emitter: 'Emitter' };

/** One log entry as a line of the exchange, or undefined for an entry that is not shown. */
export function describe(
  entry: Pick<Entry, 'actor' | 'fact'>,
  meter: MeterProfile | undefined,
): Line | undefined {
  const { fact } = entry;
  const who = entry.actor === 'panel' || entry.actor === 'emitter' ? entry.actor : 'ladderline';
  const line = (text: string, tone: Tone): Line => ({ who, text, tone });
  switch (fact.type) {
    case 'opened':
      return line(`${fact.setup.site}, ${fact.setup.pair}: job opened`, 'event');
    case 'seated':
      return line(seated(fact), 'event');
    case 'admission':
      return line(fact.answer === 'yes' ? admittedText(fact.mark) : turnedAwayText(fact.mark), 'event');
    case 'brought':
      return line(BROUGHT, 'event');
    case 'key-withdrawn':
      return line(keyWithdrawnText(fact), 'event');
    case 'link':
      return line(`${SEAT_NAME[fact.seat]} phone ${fact.online ? 'back' : 'lost its link'}`, 'event');
    case 'said':
      return line(said(fact), 'speech');
    case 'unheard':
      return line(UNHEARD_LINE[fact.why], 'event');
    case 'readback':
      return line(fact.text, 'readback');
    case 'query':
      return line(fact.text, 'question');
    case 'notice':
      return line(fact.text, 'notice');
    case 'instruction':
      return line(fact.say, fact.advice.action.kind === 'ask' ? 'question' : 'instruction');
    case 'withdrawn':
      return line(`Instruction ${WITHDRAWN[fact.why]}`, 'event');
    case 'remark':
      return line(fact.text, 'remark');
    case 'watcher-remark':
      return line(watcherRemarkText(fact), 'remark');
    case 'mounted':
      return line(hangsText(fact.mounting), 'event');
    case 'pause':
      return line(fact.why === undefined ? 'Pause' : 'Pause: the emitter phone is away', 'event');
    case 'resume':
      return line('Continuing', 'event');
    case 'stopped':
      return line('Stopped', 'event');
    case 'restarted':
      return line('Started again', 'event');
    case 'issue-opened':
      // The spoken notice that comes with it says why.
      return line('Issue opened', 'event');
    case 'issue-closed':
      return line(issueClosed(fact.how), 'event');
    case 'plan-changed':
      return line(planChangedLine({ from: currentPlan(fact.before), to: currentPlan(fact.after) }), 'event');
    case 'practised':
      // While they practise, it would give away what they are to notice.
      return undefined;
    case 'signed':
      return line(`Signed by ${personText(fact)}, ${fact.role}`, 'event');
    case 'as-left':
    case 'conditions':
    case 'variation':
    case 'next-due':
    case 'struck-out':
    case 'step':
      return line(handOverText(fact, meter), 'fact');
    case 'camera':
    case 'sensor':
      // The notice that comes with it says it.
      return undefined;
    case 'sound':
      // The notice that comes with it says it.
      return undefined;
    case 'photo':
      return line(photoLine(fact), 'fact');
    case 'photo-removed':
      return line(removedLine(fact), 'event');
    case 'names-forgotten':
      return line(namesForgottenLine(fact), 'event');
    case 'site-opened':
      return line(`${fact.site}: site opened`, 'event');
    case 'units-chosen':
      return line(unitsChosenText(fact.units), 'event');
    case 'steps-defined':
      return line(stepsDefinedText(fact.steps.length), 'event');
    case 'pair-planned':
      return line(`Pair ${fact.pair.id} planned: ${fact.pair.name}`, 'event');
    case 'pair-dropped':
      return line(`Pair ${fact.pair} dropped: ${fact.reason}`, 'event');
    case 'job-begun':
      return line(`Pair ${fact.pair}: job begun`, 'event');
    case 'accept':
      return line(accepted(fact, meter), 'fact');
    default:
      return meter && line(searchFactText(fact, meter), 'fact');
  }
}

function seated({ seat, takeover, handedOn, person }: FactOf<'seated'>): string {
  if (handedOn) return `At the ${seat} phone now: ${personText(person)}`;
  const who = person ? `: ${personText(person)}` : '';
  return `${SEAT_NAME[seat]} phone ${takeover ? 'taken over by another' : 'joined'}${who}`;
}

const said = ({ via, text, confidence, camera, sensor }: FactOf<'said'>): string => {
  if (camera) return byCameraText(text, camera);
  if (sensor) return bySensorText(text, sensor);
  return via === 'voice' && confidence !== undefined
    ? `${text} (${Math.round(confidence * 100)} % sure)`
    : text;
};

const WITHDRAWN: Record<FactOf<'withdrawn'>['why'], string> = {
  expired: 'expired: nobody answered in time',
  paused: 'withdrawn: the crew is waiting',
  stopped: 'withdrawn: the crew stopped',
  changed: 'withdrawn',
};

function accepted(fact: FactOf<'accept'>, meter: MeterProfile | undefined): string {
  const text = meter ? searchFactText(fact, meter) : 'accepted';
  return fact.override ? `${text}, by override: ${fact.override.reason}` : text;
}

import { SOUNDS_ALIKE } from '../sounds-alike.ts';
import type { Sentences } from '../translate.ts';
import { ACCOUNTS } from './accounts.ts';
import { ADMISSION } from './admission.ts';
import { ALL_SITES } from './all-sites.ts';
import { ALONE } from './alone.ts';
import { BROUGHT } from './brought.ts';
import { BUTTONS } from './buttons.ts';
import { CAMERA } from './camera.ts';
import { CAUSES } from './causes.ts';
import { CAUTIONS } from './cautions.ts';
import { CHARTS } from './charts.ts';
import { CHECKLIST } from './checklist.ts';
import { EVENTS } from './events.ts';
import { EXCHANGE } from './exchange.ts';
import { FIGURES } from './figures.ts';
import { FORMS } from './forms.ts';
import { HAND_OVER } from './hand-over.ts';
import { HEADINGS } from './headings.ts';
import { INDICATOR } from './indicator.ts';
import { INVITATION } from './invitation.ts';
import { KEYS } from './keys.ts';
import { LIMITS } from './limits.ts';
import { LINKS } from './links.ts';
import { LOOKING } from './looking.ts';
import { MEASURES } from './measures.ts';
import { MEETING } from './meeting.ts';
import { MENU } from './menu.ts';
import { MISSING } from './missing.ts';
import { MOUNTING } from './mounting.ts';
import { ORDERS } from './orders.ts';
import { PAGES } from './pages.ts';
import { PHOTOS } from './photos.ts';
import { PLAN_CHANGES } from './plan-changes.ts';
import { PRACTICE } from './practice.ts';
import { PROVING } from './proving.ts';
import { QUESTIONS } from './questions.ts';
import { READ_BACKS } from './read-backs.ts';
import { REASONS } from './reasons.ts';
import { REFUSALS } from './refusals.ts';
import { REPORTS } from './reports.ts';
import { START } from './start.ts';
import { STATUSES } from './statuses.ts';
import { TRUST } from './trust.ts';
import { VOICE } from './voice.ts';
import { WATCHING } from './watching.ts';
import { WHO_READ } from './who-read.ts';

/** Our sentences in German. A native's check is still owed. */
export const SENTENCES: Sentences = {
  ...MEASURES,
  ...MEETING,
  ...ORDERS,
  ...MOUNTING,
  ...QUESTIONS,
  ...SOUNDS_ALIKE,
  ...READ_BACKS,
  ...REPORTS,
  ...BUTTONS,
  ...HEADINGS,
  ...CAUTIONS,
  ...EXCHANGE,
  ...INVITATION,
  ...ACCOUNTS,
  ...ALL_SITES,
  ...WHO_READ,
  ...ADMISSION,
  ...BROUGHT,
  ...KEYS,
  ...START,
  ...MENU,
  ...CHECKLIST,
  ...PROVING,
  ...CAUSES,
  ...MISSING,
  ...REASONS,
  ...FIGURES,
  ...PRACTICE,
  ...HAND_OVER,
  ...EVENTS,
  ...PAGES,
  ...VOICE,
  ...FORMS,
  ...PHOTOS,
  ...ALONE,
  ...INDICATOR,
  ...LOOKING,
  ...REFUSALS,
  ...LIMITS,
  ...LINKS,
  ...CHARTS,
  ...STATUSES,
  ...CAMERA,
  ...WATCHING,
  ...TRUST,
  ...PLAN_CHANGES,
};

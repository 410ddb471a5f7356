import type { Seat } from '../model/facts.ts';

/** Two phones that find each other without a server, by square codes that each shows the other. */

export const MEET_AT_PANEL = 'The other phone, without a server';
export const MEET_AT_EMITTER = "Meet the panel's phone";
export const SAME_WIFI = 'Both phones must be in the same Wi-Fi, or one in the hotspot of the other.';

/** At the panel, in turn. */
export const SHOW_OFFER =
  '1. Scan this with the other phone: with its camera app, or on its page for a code.';
export const MEETING_CODE = 'Square code of this meeting';
export const THEN_SCAN = '2. The other phone shows a code then. Scan it here.';
export const SCAN_ITS_CODE = 'Scan its code';

/** At the emitter, in turn. */
export const SCAN_PANEL = "1. Scan the code that the panel's phone shows.";
export const SHOW_ANSWER = "2. Show this to the panel's phone. Stay on this page until the two have met.";

/** The same as text. */
export const AS_TEXT = 'Without a camera: as text';
export const TEXT_TO_SEND = 'Text of this code';
export const COPY = 'Copy';
export const COPIED = 'Copied';
export const TEXT_OF_OTHER = 'Text of its code';
export const USE_TEXT = 'Use this text';

export const POINT_AT_CODE = 'Point the camera at the square code of the other phone.';
export const STOP_SCANNING = 'Stop the camera';
export const MAKING_CODE = 'Making the code';
export const REACHING = 'The phones look for each other.';
export const HAVE_MET = 'The two phones have met';

/** The pages of the two phones are not of one version. */
export const PAGES_DIFFER =
  'The pages of the two phones are of different versions. Open both once where the server answers.';

/** Why it goes no further. */
export const NOT_A_CODE = 'This is no code of a meeting. Scan the code that the other phone shows.';
export const OTHER_CODE = {
  panel:
    "This is the panel's own code. Scan the one that the other phone shows after it has scanned this one.",
  emitter: "This is a code of an emitter phone. Scan the one that the panel's phone shows.",
} as const satisfies Record<Seat, string>;
export const ANOTHER_MEETING = 'This code belongs to an earlier meeting. Begin again on both phones.';
export const NOT_REACHED =
  'The two phones do not reach each other. Put both into the same Wi-Fi, or one into the hotspot of the other: a Wi-Fi for guests often keeps phones apart. Then begin again on both.';
export const CANNOT_MEET = 'This browser cannot reach another phone without a server.';
export const BEGIN_MEETING_AGAIN = 'Begin the meeting again';

/** While there is no line. */
export const LINE_LOST =
  "The panel's phone is not reached. What you say is kept. Come back into its Wi-Fi; if no link comes, meet it again.";
export const RECORD_AT_SERVER =
  "The panel's phone has brought the record to the server. To go on, join there with a code from the panel: nothing that you said is lost.";

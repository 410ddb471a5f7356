/** A job whose log one phone keeps, without a server, until it brings it there. */

/** In the record. */
export const BROUGHT = 'One phone alone kept the record up to here. From here on the server keeps it';

/** At the phone. */
export const KEPT_HERE = 'Kept on this phone only';
export const KEPT_HERE_RISK =
  'Only this phone has the record. If the phone is lost or its browser is cleared, the record is lost. Bring it to the server as soon as there is a link.';
export const BRING = 'Bring the record to the server';
export const BRINGING = 'Bringing the record to the server';
export const NO_SERVER_HEADING = 'No server at hand?';
export const NO_SERVER_ABOUT =
  'This phone can keep the record alone, and bring it to the server later. Until then nobody else can see it, and it cannot be signed. The record says that one phone alone kept it.';
export const NO_SERVER_TWO =
  'This phone can keep the record, and bring it to the server later. The other phone reaches it over the same Wi-Fi, by square codes that the two show each other. Until then nobody else can see the record, and it cannot be signed.';
export const BEGIN_HERE = 'Begin without the server';
export const NOT_WITHOUT_SERVER = 'This needs the server. Bring the record there first.';
export const OPEN_TWICE =
  'This record is open in another window of this phone, or on its way to the server. Close the other window, or bring the record to the server, then load this page again.';
export const CANNOT_KEEP =
  'This browser cannot keep the record. Leave private browsing or make room on the phone, then try again.';
export const NOT_KEPT_SAY_AGAIN = 'This phone could not keep that. Make room on it. It is tried again.';
export const HERE_LOST =
  'The record that this phone kept is damaged or gone. Show this screen to your supervisor, and do not count on the alignment.';

/** At the phone at the emitter, once the panel's has brought it. */
export const RECORD_AT_SERVER_TITLE = 'The record is at the server now';
export const HERE_LOST_TITLE = 'The record is not whole';
export const ON_PHONE_CONTINUE = 'Go on with it on this phone';
export const LEAVES_HERE =
  'The record stays on this phone, and on its first page. Nobody else has it until you bring it to the server.';
export const STAYS_AT_PANEL =
  "The record stays on the panel's phone. To come back, meet it again: scan its code.";
export const BRING_IN_MENU = 'Only this phone has the record. Bring it to the server: it is in the menu.';

/** From the server. */
export const BROUGHT_FAULTS = {
  damaged:
    'The record that this phone kept is damaged, and the server cannot take it. Show this to your supervisor.',
  practice: 'The server takes no record of a practice.',
  foreign:
    'The record that this phone kept holds entries that only a server writes. The server cannot take it. Show this to your supervisor.',
};
export const BROUGHT_OTHER =
  'The server has another record under this number. It cannot take this one. Show this to your supervisor.';

/** A job whose log one phone keeps, without a server, until it brings it there. */

/** In the record. */
export const BROUGHT = 'One phone alone kept the record up to here. From here on the server keeps it';

/** At the phone. */
export const KEPT_HERE = 'Kept on this phone only';

/** At the phone at the emitter, once the panel's has brought it. */
export const RECORD_AT_SERVER_TITLE = 'The record is at the server now';
export const HERE_LOST_TITLE = 'The record is not whole';
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

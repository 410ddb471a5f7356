/** Where the log is kept on a phone: to begin, to keep and to bring it. Apart from `brought.ts`, which every seat has at once. */

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
export const ON_PHONE_CONTINUE = 'Go on with it on this phone';

/** What leads to a meeting: apart from what is said there, which few fetch. */
export const NO_SERVER_MEET = "No server? Meet the panel's phone";
export const MEET_AGAIN = 'Meet the other phone again';

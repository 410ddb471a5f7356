/** On the page for a code, where no server answers. */
export const NO_SERVER_MEET = "No server? Meet the panel's phone";

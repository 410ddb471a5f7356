/** In the menu on the ladder. What stands behind it is fetched only when it is opened. */
export const STILL_THERE = 'If nothing is heard from me';

/** Join codes: no 0/O, 1/I/L, so that nobody misreads a code over the radio or in the sun. */
export const CODE_ALPHABET = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
export const CODE_LENGTH = 6;

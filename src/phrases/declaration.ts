/** The words that a signer signs. They go into the log as they were shown, so that later words change no old record. */
export const DECLARATION =
  'I have read this record and its findings. To my knowledge it says what was done and what was read. What is open, failed or not proven stands in it as such.';

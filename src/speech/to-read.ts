/** What somebody reads so that a voice is known, in this order. */
export const TO_READ = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

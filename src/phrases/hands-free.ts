/** Before a job begins; the choice is kept on the phone. */
export const HANDS_FREE_ON = 'Talk hands-free from the start: on';
export const HANDS_FREE_OFF = 'Talk hands-free from the start: off';

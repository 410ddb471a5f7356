import type { AdmissionAnswer } from '../model/admission.ts';

/** What a message that still waits on a phone says, in words. */
export const ANSWER_TO_ASKER: Record<AdmissionAnswer, string> = {
  yes: 'yes, let it in',
  no: 'no, not our phone',
};
export const NEW_JOIN_CODE = 'a new join code';
export const takeBackText = (seq: number): string => `take back entry ${seq}`;

import * as z from 'zod/mini';
import { CALL_FORM } from '../phrases/admission.ts';
import { callOf } from './call-words.ts';

/** The word under which the panel of a job is asked: "KILO 417". No secret: it opens nothing. Case and spelling are forgiven. */
export const JobWord = z.pipe(
  z.string().check(z.maxLength(20)),
  z.transform((typed, ctx) => {
    const call = callOf(typed);
    if (call !== undefined && /\d{3}$/.test(call)) return call;
    ctx.issues.push({ code: 'custom', input: typed, message: CALL_FORM });
    return z.NEVER;
  }),
);

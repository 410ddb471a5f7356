import { checkSignature } from '../../server/notary/ed25519.ts';
import { stampsBy } from '../../server/stamps/token.ts';
import type { Known } from '../../src/verify/signed-heads.ts';
import { verify } from '../../src/verify/verify.ts';

/** As the command does it. `known`: what somebody knows beside the file. */
export const verified = (text: string, known: Partial<Known> = {}) =>
  verify(text, { check: checkSignature, checkStamp: stampsBy(undefined), ...known });

import canonicalize from 'canonicalize';
import * as z from 'zod/mini';
import type { TimeStamp, TreeHead } from './signed-head.ts';

/**
 * The exact text that a time stamp is for: the head of the tree with its signature, so that it is proven too that it was
 * signed by then.
 */
export const stampText = ({ size, root, at, key, signature }: TreeHead): string =>
  canonicalize({
    format: 'ladderline-stamped-tree-head',
    ...{ size, root, at, key, signature },
  }) as string;

/** What of a token is not as it was given, or never was a time stamp of this text. */
export type StampFault =
  /** No TimeStampToken of RFC 3161, or more than one signed it. */
  | 'form'
  /** It is for another text. */
  | 'imprint'
  /** It answers another question. */
  | 'nonce'
  /** What it says was changed after it was signed. */
  | 'signature'
  /** It does not name the certificate that signed it (ESSCertID of RFC 2634, ESSCertIDv2 of RFC 5816). */
  | 'signer';

/** Why a token that is whole proves nothing to this reader. */
export type StampDoubt =
  /** Nobody said whose time is believed. */
  | 'nobody-named'
  /** The certificate that signed it is neither in it nor given. */
  | 'no-certificate'
  /** Of an algorithm that we cannot check. */
  | 'algorithm'
  /** The certificate may not sign time stamps, or other things too (RFC 3161, section 2.3). */
  | 'purpose'
  /** The certificate was not valid at that time. */
  | 'not-valid-then'
  /** It does not come from the authority that was named. */
  | 'other-authority';

export type CheckedStamp =
  | { readonly kind: 'wrong'; readonly fault: StampFault }
  /** `at`: the time that it states, ms since 1970. */
  | { readonly kind: 'unproven'; readonly doubt: StampDoubt; readonly at: number }
  | {
      readonly kind: 'proven';
      /** The subject of the certificate that signed it, and when that ends, ms since 1970. */
      readonly by: string;
      readonly until: number;
      /** ms since 1970. */
      readonly at: number;
      /** How far from `at` the true time may be, ms; missing where the authority does not say. */
      readonly accuracy?: number;
    };

/** How a time stamp of a text is checked: passed in, because it takes certificates. */
export type CheckStamp = (text: string, stamp: Pick<TimeStamp, 'nonce' | 'token'>) => CheckedStamp;

/** What time stamps prove of a log. */
export type Stamped =
  | { readonly kind: 'none' }
  | { readonly kind: 'unproven'; readonly doubt: StampDoubt }
  /** Oldest first. `count`: so many entries stood so at that time. `unproven`: how many other stamps prove nothing. */
  | {
      readonly kind: 'stamped';
      readonly stamps: readonly (Extract<CheckedStamp, { kind: 'proven' }> & { readonly count: number })[];
      readonly unproven: number;
    };

/** Where the server has the time of its records vouched for, as of now. Times are ms since 1970, by the server's clock. */
export const Stamping = z.object({
  /** The authority, by its host. */
  from: z.string(),
  /** When the newest time stamp was asked for; missing where there is none yet. */
  last: z.optional(z.int()),
  /** Since when no time stamp could be had. */
  failingSince: z.optional(z.int()),
  /** Whether something was signed after the newest time stamp. */
  isBehind: z.boolean(),
});
export type Stamping = z.infer<typeof Stamping>;

import { MAX_PAIRS, type PairId } from '../model/pair-plan.ts';

/** Why nothing was done. */
export const NOT_A_COUNTED_READING = 'That entry is not a reading that still counts. Nothing was changed.';
export const CANNOT_TAKE_BACK = 'That entry cannot be taken back, or already was.';
export const NO_OPEN_ISSUE = 'That entry is not an open issue. Nothing was changed.';
export const NO_READING_TO_ACCEPT = 'There is no reading to accept yet.';
export const NOT_YET_HANDED_OVER =
  'Accept the alignment first. What is written for the hand-over is about an accepted pair.';
export const NOT_PRACTICE = 'This job is not practice: its beam is real. Nothing was written down.';
export const PRACTICE_NOT_SIGNED =
  'This is practice on a simulated pair. It is no record, and nobody signs it.';
export const NO_SUCH_STEP = 'This visit has no such step. Nothing was written down.';
export const NOTHING_WRITTEN = 'Nothing is filled in. Nothing was written down.';
export const NOTHING_TO_STRIKE =
  'That no longer stands: it was struck out or replaced meanwhile. Read the record again.';
export const OVERRIDE_NOT_NEEDED = 'Nothing is missing. Say "accept": no override is needed.';
export const NOTHING_TO_SIGN = 'There is nothing to sign yet.';
export const RECORD_HAS_GROWN = 'The record has grown while you read it. Read what is new, then sign again.';

export const NOT_THE_NAME =
  'The typed signature is not the name of the signer. Type the name as it stands above, or draw the signature.';
export const signedAlready = (name: string): string =>
  `${name} has signed this record already. A second signature is for another person.`;
export const SITE_NOT_READ =
  'The comparison with the other pairs of the site is not read yet. Wait a moment, then sign.';
export const SITE_HAS_CHANGED =
  'The findings of the site have changed while you read. Read what is new, then sign again.';

export const notAReading = (text: string): string =>
  `"${text}" is not a reading. Type what the meter showed, such as 142.`;

export const TOO_MANY_PAIRS = `A site has at most ${MAX_PAIRS} pairs. Open another site for the rest.`;
export const noSuchPair = (pair: PairId): string =>
  `There is no pair ${pair} on this site. Nothing was changed.`;
export const noMeter = (pair: PairId): string =>
  `The plan of ${pair} has no meter. Choose the meter for its readings.`;

export const NO_SUCH_ZONE = 'There is no such time zone. Give a name like "Europe/London" or "UTC".';
export const sameIdText = (one: PairId, other: PairId): string =>
  one === other
    ? `Two of these pairs have the id ${one}.`
    : `The ids ${one} and ${other} differ only in capital letters. Give one of them another id.`;

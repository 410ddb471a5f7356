import { createHash, randomBytes, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { AsnConvert, OctetString } from '@peculiar/asn1-schema';
import { MessageImprint, PKIStatus, TimeStampReq, TimeStampResp } from '@peculiar/asn1-tsp';
import { AlgorithmIdentifier } from '@peculiar/asn1-x509';
import type { TimeStamp } from '../../src/log/signed-head.ts';
import type { CheckedStamp, CheckStamp } from '../../src/log/time-stamp.ts';
import { SHA256 } from './token.ts';

/** What an authority gave, and what it proves. */
export interface GivenStamp extends Pick<TimeStamp, 'nonce' | 'token'> {
  readonly checked: Extract<CheckedStamp, { kind: 'proven' }>;
}

/** Asks for a time stamp of a text. Rejects with `NoStamp`, or what `fetch` rejects with. */
export type AskForStamp = (text: string, signal: AbortSignal) => Promise<GivenStamp>;

/** No time stamp that is worth to be kept. The message is for the person who runs the server. */
export class NoStamp extends Error {
  override name = 'NoStamp';
}

/** An authority may take so long, ms, and its answer so much, bytes. Common practice, no source: tokens with their chain are 2 to 10 kB. */
export const STAMP_WITHIN_MS = 10_000;
export const STAMP_BYTES_MOST = 65_536;

/** RFC 3161, section 3.4. */
const QUESTION = 'application/timestamp-query';
const ANSWER = 'application/timestamp-reply';

/** Certificates in a file (PEM). Throws where there is none, or one that cannot be read. */
export function certificatesIn(file: string): X509Certificate[] {
  const blocks = readFileSync(file, 'utf8').match(
    /-----BEGIN CERTIFICATE-----[^-]+-----END CERTIFICATE-----/g,
  );
  if (!blocks) throw new Error(`${file} holds no certificate (PEM)`);
  return blocks.map((pem) => new X509Certificate(pem));
}

/** The question for a text (RFC 3161, section 2.4.1), DER. `nonce`: 16 bytes, hexadecimal. */
export function questionFor(text: string, nonce: string): Uint8Array {
  const hash = createHash('sha256').update(text, 'utf8').digest();
  const question = new TimeStampReq({
    messageImprint: new MessageImprint({
      hashAlgorithm: new AlgorithmIdentifier({ algorithm: SHA256, parameters: null }),
      hashedMessage: new OctetString(hash),
    }),
    nonce: new Uint8Array(Buffer.from(nonce, 'hex')).buffer,
    // So that whoever checks it later needs only the certificate of the authority.
    certReq: true,
  });
  return new Uint8Array(AsnConvert.serialize(question));
}

/** 16 bytes whose number is positive and needs all of them, so that DER neither adds nor drops one. */
export function newNonce(): string {
  const bytes = randomBytes(16);
  bytes[0] = ((bytes[0] ?? 0) & 0x3f) | 0x40;
  return bytes.toString('hex');
}

/** Asks the authority at `url`. What it gives is checked as whoever reads the record will check it. */
export const askAt =
  (url: string, check: CheckStamp, withinMs = STAMP_WITHIN_MS): AskForStamp =>
  async (text, signal) => {
    const nonce = newNonce();
    const within = AbortSignal.timeout(withinMs);
    const answer = await fetch(url, {
      method: 'POST',
      headers: { 'content-type': QUESTION, accept: ANSWER },
      body: questionFor(text, nonce) as BodyInit,
      // To be led elsewhere is for who runs the server to decide.
      redirect: 'manual',
      signal: AbortSignal.any([signal, within]),
    }).catch((error: unknown) => {
      throw within.aborted ? new NoStamp(`no answer within ${withinMs / 1000} s`) : error;
    });
    const type = answer.headers.get('content-type')?.split(';')[0]?.trim().toLowerCase();
    if (answer.status !== 200 || type !== ANSWER) {
      await answer.body?.cancel();
      const to = answer.headers.get('location');
      throw new NoStamp(
        answer.status === 200
          ? `it answered with ${type ?? 'no content type'} in place of ${ANSWER}: is this the address of a time-stamping authority?`
          : `it answered ${answer.status}${to ? `, which leads to ${to}: give that address if you trust it` : ''}`,
      );
    }
    const reply = await bodyOf(answer).catch((error: unknown) => {
      throw within.aborted ? new NoStamp(`no whole answer within ${withinMs / 1000} s`) : error;
    });
    const given = { nonce, token: Buffer.from(tokenIn(reply)).toString('base64') };
    const checked = check(text, given);
    if (checked.kind === 'proven') return { ...given, checked };
    throw new NoStamp(
      `its time stamp proves nothing: ${checked.kind === 'wrong' ? checked.fault : checked.doubt}`,
    );
  };

async function bodyOf({ body }: Response): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let bytes = 0;
  for await (const part of body ?? []) {
    bytes += part.byteLength;
    // Leaving the loop cancels the rest.
    if (bytes > STAMP_BYTES_MOST) throw new NoStamp(`its answer is more than ${STAMP_BYTES_MOST} bytes`);
    parts.push(part);
  }
  return Buffer.concat(parts);
}

/** The token in an answer (RFC 3161, section 2.4.2), DER. Throws `NoStamp`. */
function tokenIn(reply: Uint8Array): ArrayBuffer {
  const answer = parsed(reply);
  if (!answer) throw new NoStamp('its answer is no TimeStampResp (RFC 3161)');
  const { status, statusString } = answer.status;
  if (status !== PKIStatus.granted && status !== PKIStatus.grantedWithMods)
    throw new NoStamp(
      `it refused: status ${PKIStatus[status] ?? status}${statusString ? `, ${JSON.stringify([...statusString].join(' ').slice(0, 200))}` : ''}`,
    );
  if (!answer.timeStampToken) throw new NoStamp('its answer has no time stamp in it');
  return AsnConvert.serialize(answer.timeStampToken);
}

function parsed(reply: Uint8Array): TimeStampResp | undefined {
  try {
    return AsnConvert.parse(reply, TimeStampResp);
  } catch {
    return undefined;
  }
}

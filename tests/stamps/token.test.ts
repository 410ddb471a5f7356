import { randomBytes, type X509Certificate } from 'node:crypto';
import { SignedData } from '@peculiar/asn1-cms';
import { AsnConvert } from '@peculiar/asn1-schema';
import { Accuracy, TimeStampResp, TSTInfo } from '@peculiar/asn1-tsp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newNonce, questionFor } from '../../server/stamps/ask.ts';
import { stampsBy } from '../../server/stamps/token.ts';
import type { CheckedStamp } from '../../src/log/time-stamp.ts';
import { NO_OPENSSL, OPENSSL, OtherAuthority } from './openssl.ts';

if (!OPENSSL) console.warn(NO_OPENSSL);

const TEXT = 'the head of a tree, canonical: ∑';

/** TimeStampToken in a TimeStampResp, DER. */
const tokenOf = (reply: Uint8Array): Buffer =>
  Buffer.from(AsnConvert.serialize(AsnConvert.parse(reply, TimeStampResp).timeStampToken));

const infoOf = (token: Uint8Array): TSTInfo => {
  const { timeStampToken } = {
    timeStampToken: AsnConvert.parse(wrapped(token), TimeStampResp).timeStampToken,
  };
  const data = AsnConvert.parse(timeStampToken?.content ?? new ArrayBuffer(0), SignedData);
  return AsnConvert.parse(data.encapContentInfo.eContent?.single?.buffer ?? new ArrayBuffer(0), TSTInfo);
};

/** The token as the answer "granted". */
function wrapped(token: Uint8Array): Uint8Array {
  const body = Buffer.concat([Buffer.from('3003020100', 'hex'), token]);
  return Buffer.concat([Buffer.from([0x30, 0x82, body.length >> 8, body.length & 255]), body]);
}

describe.skipIf(!OPENSSL)('R132: a time stamp, as OpenSSL makes it (RFC 3161, RFC 5816)', () => {
  let tsa: OtherAuthority;
  let other: OtherAuthority;
  let nonce: string;
  let token: Buffer;
  let info: TSTInfo;

  const checked = (
    der: Uint8Array,
    given: { roots?: readonly X509Certificate[] | undefined; text?: string; nonce?: string } = {},
  ): CheckedStamp =>
    stampsBy('roots' in given ? given.roots : [tsa.certificate('root')])(given.text ?? TEXT, {
      nonce: given.nonce ?? nonce,
      token: Buffer.from(der).toString('base64'),
    });

  /** The same TSTInfo with some of it changed, signed anew by OpenSSL. */
  const forged = (change: Partial<TSTInfo>, signer = 'signer', named = true, more: readonly string[] = []) =>
    tsa.forge(
      new Uint8Array(
        AsnConvert.serialize(Object.assign(AsnConvert.parse(AsnConvert.serialize(info), TSTInfo), change)),
      ),
      signer,
      named,
      more,
    );

  const fresh = (signer: string, chain: readonly string[] = []) => {
    const own = newNonce();
    return { nonce: own, der: tokenOf(tsa.reply(questionFor(TEXT, own), signer, chain)) };
  };

  beforeAll(() => {
    tsa = new OtherAuthority();
    other = new OtherAuthority('Other stamps');
    tsa.issue('signer', { rsa: true });
    nonce = newNonce();
    token = tokenOf(tsa.reply(questionFor(TEXT, nonce), 'signer'));
    info = infoOf(token);
  });
  afterAll(() => {
    tsa.remove();
    other.remove();
  });

  it('proves a time to who believes its authority, and says by whom', () => {
    const result = checked(token);
    expect(result).toEqual({
      kind: 'proven',
      by: 'CN=Test stamps signer',
      until: Date.UTC(2049, 11, 31, 23, 59, 59),
      at: info.genTime.getTime(),
      accuracy: 1000,
    });
    expect(Math.abs(info.genTime.getTime() - Date.now())).toBeLessThan(60_000);
  });

  it('is what OpenSSL itself verifies, by the same certificate', async () => {
    const { writeFileSync } = await import('node:fs');
    writeFileSync(tsa.path('token.der'), token);
    writeFileSync(tsa.path('text'), TEXT);
    const said = tsa.run(
      ...['ts', '-verify', '-data', 'text', '-in', 'token.der', '-token_in', '-CAfile', 'root.pem'],
    );
    expect(String(said)).toContain('Verification: OK');
  });

  it('is one with a key on P-256, with SHA-384 and SHA-512, or with the certificate of the signer given itself', () => {
    tsa.issue('curve');
    const { nonce: own, der } = fresh('curve');
    expect(checked(der, { nonce: own })).toMatchObject({ kind: 'proven', by: 'CN=Test stamps curve' });
    expect(checked(token, { roots: [tsa.certificate('signer')] })).toMatchObject({ kind: 'proven' });
    for (const md of ['sha384', 'sha512'])
      for (const signer of ['signer', 'curve'])
        expect(checked(forged({}, signer, true, ['-md', md]))).toMatchObject({ kind: 'proven' });
  });

  it.each([
    ['another text', () => checked(token, { text: `${TEXT} ` }), { kind: 'wrong', fault: 'imprint' }],
    ['another nonce', () => checked(token, { nonce: newNonce() }), { kind: 'wrong', fault: 'nonce' }],
    ['no nonce', () => checked(forged({ nonce: undefined as never })), { kind: 'wrong', fault: 'nonce' }],
    ['nothing in it', () => checked(Buffer.alloc(0)), { kind: 'wrong', fault: 'form' }],
    ['something else', () => checked(randomBytes(900)), { kind: 'wrong', fault: 'form' }],
    [
      'a byte behind it',
      () => checked(Buffer.concat([token, Buffer.of(0)])),
      { kind: 'wrong', fault: 'form' },
    ],
    ['its end cut off', () => checked(token.subarray(0, -1)), { kind: 'wrong', fault: 'form' }],
    ['another version', () => checked(forged({ version: 2 as never })), { kind: 'wrong', fault: 'form' }],
    [
      'no certificate named inside',
      () => checked(forged({}, 'signer', false)),
      { kind: 'wrong', fault: 'signer' },
    ],
  ] as const)('with %s, is wrong', (_, result, is) => {
    expect(result()).toEqual(is);
  });

  it('whose imprint is by a weaker hash is wrong, and one that is signed by way of it proves nothing', () => {
    const sha1 = AsnConvert.parse(
      AsnConvert.serialize(info.messageImprint),
      Object.getPrototypeOf(info.messageImprint).constructor,
    ) as typeof info.messageImprint;
    sha1.hashAlgorithm.algorithm = '1.3.14.3.2.26';
    expect(checked(forged({ messageImprint: sha1 }))).toEqual({ kind: 'wrong', fault: 'imprint' });
    expect(checked(forged({}, 'signer', true, ['-md', 'sha1']))).toMatchObject({
      kind: 'unproven',
      doubt: 'algorithm',
    });
  });

  it('proves no other time, text or signer, whichever byte of it is changed (each third is tried)', () => {
    const right = checked(token);
    let stillProven = 0;
    const check = stampsBy([tsa.certificate('root')]);
    for (let at = 0; at < token.length; at += 3) {
      const changed = Buffer.from(token);
      changed[at] = (changed[at] ?? 0) ^ 1;
      const result = check(TEXT, { nonce, token: changed.toString('base64') });
      if (result.kind === 'proven') {
        expect(result).toEqual(right);
        stillProven++;
      }
    }
    // What no signature covers: versions and the list of digests, of which nothing is taken.
    expect(stillProven).toBeLessThan(20);
  });

  it.each([
    ['nobody is named', () => checked(token, { roots: undefined }), 'nobody-named'],
    [
      'another authority is named',
      () => checked(token, { roots: [other.certificate('root')] }),
      'other-authority',
    ],
    ['an authority of the same name is named', () => checked(token, { roots: [twin()] }), 'other-authority'],
    [
      'the signer is for more than time stamps',
      () => by('wide', { usage: 'critical,timeStamping,codeSigning' }),
      'purpose',
    ],
    ['the signer is for something else', () => by('mail', { usage: 'critical,emailProtection' }), 'purpose'],
    [
      'the signer does not say as critical what it is for',
      () => by('soft', { usage: 'timeStamping' }),
      'purpose',
    ],
    ['the signer does not say what it is for', () => by('silent', { usage: '' }), 'purpose'],
    [
      'the key of the signer may not sign',
      () => by('cipher', { keyUsage: 'critical,keyEncipherment' }),
      'purpose',
    ],
    [
      'the signer is for something that we do not know',
      () => by('strange', { more: '1.2.3.4.5 = critical,ASN1:NULL' }),
      'purpose',
    ],
  ] as const)('proves nothing where %s', (_, result, doubt) => {
    expect(result()).toMatchObject({ kind: 'unproven', doubt });
  });

  const by = (name: string, wanted: Parameters<OtherAuthority['issue']>[1]) => {
    tsa.issue(name, wanted);
    return checked(forged({}, name));
  };

  const twin = () => {
    const same = new OtherAuthority();
    const certificate = same.certificate('root');
    same.remove();
    return certificate;
  };

  it('is believed from the first second of its certificate to the last, and not one second beside', () => {
    tsa.issue('short', { from: '260101000000Z', to: '260201000000Z' });
    const at = (time: string) => checked(forged({ genTime: new Date(time) }, 'short'));
    const then = { kind: 'unproven', doubt: 'not-valid-then' };
    expect(at('2025-12-31T23:59:59Z')).toMatchObject(then);
    expect(at('2026-01-01T00:00:00Z')).toMatchObject({ kind: 'proven' });
    expect(at('2026-02-01T00:00:00Z')).toMatchObject({ kind: 'proven' });
    expect(at('2026-02-01T00:00:01Z')).toMatchObject(then);
    // Today it has ended; what it stamped before stays proven.
    expect(at('2026-01-15T12:00:00Z')).toMatchObject({ kind: 'proven', until: Date.UTC(2026, 1, 1) });
  });

  it('is believed by way of authorities between, each of which may sign such certificates, and was valid', () => {
    tsa.issue('between', { authority: 0 });
    tsa.issue('below', { by: 'between' });
    const { nonce: own, der } = fresh('below', ['between']);
    expect(checked(der, { nonce: own })).toMatchObject({ kind: 'proven', by: 'CN=Test stamps below' });
    // Without the one between there is no path.
    const bare = fresh('below');
    expect(checked(bare.der, { nonce: bare.nonce })).toMatchObject({ doubt: 'other-authority' });
    expect(
      checked(bare.der, { nonce: bare.nonce, roots: [tsa.certificate('root'), tsa.certificate('between')] }),
    ).toMatchObject({ kind: 'proven' });

    const none = { kind: 'unproven', doubt: 'other-authority' };
    // One more below than it allows (RFC 5280, 4.2.1.9).
    tsa.issue('second', { authority: 0, by: 'between' });
    tsa.issue('deep', { by: 'second' });
    const deep = fresh('deep', ['second', 'between']);
    expect(checked(deep.der, { nonce: deep.nonce })).toMatchObject(none);
    // One that is no authority at all.
    tsa.issue('plain', { keyUsage: 'critical,digitalSignature,keyCertSign' });
    tsa.issue('under', { by: 'plain' });
    const under = fresh('under', ['plain']);
    expect(checked(under.der, { nonce: under.nonce })).toMatchObject(none);
    // One that had ended.
    tsa.issue('ended', { authority: 0, from: '250101000000Z', to: '250201000000Z' });
    tsa.issue('late', { by: 'ended' });
    const late = fresh('late', ['ended']);
    expect(checked(late.der, { nonce: late.nonce })).toMatchObject(none);
  });

  it('says so where the certificate of the signer is nowhere, and takes it from what is given', () => {
    const bare = forged({}, 'signer', true, ['-nocerts']);
    expect(checked(bare)).toMatchObject({ kind: 'unproven', doubt: 'no-certificate' });
    expect(checked(bare, { roots: [tsa.certificate('signer')] })).toMatchObject({ kind: 'proven' });
    expect(checked(forged({}, 'signer', true, ['-keyid']))).toMatchObject({ kind: 'proven' });
  });

  it('has the accuracy that the authority states, to the microsecond, or none', () => {
    const accuracy = (given: Accuracy | undefined) => {
      const result = checked(forged({ accuracy: given as never }));
      return result.kind === 'proven' ? result.accuracy : result;
    };
    expect(accuracy(new Accuracy({ seconds: 2, millis: 5, micros: 250 }))).toBeCloseTo(2005.25);
    expect(accuracy(undefined)).toBeUndefined();
  });
});

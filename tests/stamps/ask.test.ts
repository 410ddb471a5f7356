import { writeFileSync } from 'node:fs';
import type { RequestListener, ServerResponse } from 'node:http';
import { AsnConvert } from '@peculiar/asn1-schema';
import { PKIStatusInfo, TimeStampReq, TimeStampResp } from '@peculiar/asn1-tsp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { askAt, NoStamp, newNonce, questionFor, STAMP_BYTES_MOST } from '../../server/stamps/ask.ts';
import { stampsBy } from '../../server/stamps/token.ts';
import { answering, bodyOf, OPENSSL, OtherAuthority, openssl, stamping } from './openssl.ts';

const TEXT = 'the head of a tree';
const never = new AbortController().signal;

const replyOf =
  (body: Uint8Array, type = 'application/timestamp-reply', status = 200): RequestListener =>
  (_, response) =>
    void response.writeHead(status, { 'content-type': type }).end(body);

/** What the server says about an authority that answers so. */
async function refusal(handle: RequestListener, withinMs?: number): Promise<string> {
  const error: unknown = await askAt(
    await answering(handle),
    stampsBy([]),
    withinMs,
  )(TEXT, never).catch((e) => e);
  expect(error).toBeInstanceOf(NoStamp);
  return (error as Error).message;
}

describe('R130: the question', () => {
  it('has a nonce of 16 bytes that DER neither shortens nor lengthens, and never the same', () => {
    const nonces = Array.from({ length: 500 }, newNonce);
    expect(new Set(nonces).size).toBe(500);
    for (const nonce of nonces) expect(nonce).toMatch(/^[4-7][0-9a-f]{31}$/);
  });

  it.skipIf(!OPENSSL)(
    'is one as OpenSSL reads it: version 1, SHA-256 of the text, the nonce, and a wish for the certificate',
    () => {
      const nonce = newNonce();
      const authority = new OtherAuthority();
      try {
        writeFileSync(authority.path('question'), questionFor(TEXT, nonce));
        const said = String(authority.run('ts', '-query', '-in', 'question', '-text'));
        expect(said).toContain('Version: 1');
        expect(said).toContain('Hash Algorithm: sha256');
        // sha256sum of the text.
        const sum = String(openssl(authority.folder, ['dgst', '-sha256', '-r'], Buffer.from(TEXT))).slice(
          0,
          64,
        );
        const shown = said.replace(/^ +[0-9a-f]{4} - (.*?) {3}.*$/gm, '$1').replace(/[\s-]/g, '');
        expect(shown).toContain(sum);
        expect(said.toLowerCase()).toContain(`nonce: 0x${nonce}`);
        expect(said).toContain('Certificate required: yes');
      } finally {
        authority.remove();
      }
    },
  );
});

describe('R131: an authority that gives no time stamp is told apart, and nothing of it is kept', () => {
  const response = (status: number) =>
    new Uint8Array(AsnConvert.serialize(new TimeStampResp({ status: new PKIStatusInfo({ status }) })));

  it.each([
    [
      'another content type',
      replyOf(Buffer.of(1), 'text/html; charset=utf-8'),
      /text\/html in place of application\/timestamp-reply/,
    ],
    ['an error', replyOf(Buffer.alloc(0), 'text/plain', 503), /answered 503$/],
    ['an answer that is none', replyOf(Buffer.from('hello')), /no TimeStampResp/],
    ['nothing', replyOf(Buffer.alloc(0)), /no TimeStampResp/],
    ['a rejection', replyOf(response(2)), /refused: status rejection/],
    ['"waiting"', replyOf(response(3)), /refused: status waiting/],
    ['"granted" without a token', replyOf(response(0)), /no time stamp in it/],
    [
      'a way elsewhere',
      ((_, answer) =>
        void answer.writeHead(302, { location: 'http://192.0.2.1/tsa' }).end()) as RequestListener,
      /answered 302, which leads to http:\/\/192\.0\.2\.1\/tsa/,
    ],
  ])('%s', async (_, handle, says) => {
    expect(await refusal(handle)).toMatch(says);
  });

  it('too large an answer, by one byte, is not read to its end', async () => {
    expect(await refusal(replyOf(Buffer.alloc(STAMP_BYTES_MOST)))).toMatch(/no TimeStampResp/);
    expect(await refusal(replyOf(Buffer.alloc(STAMP_BYTES_MOST + 1)))).toMatch(/more than 65536 bytes/);
    let open: ServerResponse | undefined;
    const endless: RequestListener = (_, response) => {
      open = response.writeHead(200, { 'content-type': 'application/timestamp-reply' });
      const more = () => {
        while (!response.destroyed && response.write(Buffer.alloc(16_384)));
      };
      response.on('drain', more);
      more();
    };
    expect(await refusal(endless)).toMatch(/more than/);
    await new Promise((resolve) => (open?.destroyed ? resolve(undefined) : open?.once('close', resolve)));
  });

  it('one that is slow is waited for no longer than its time, before its answer and within it', async () => {
    expect(await refusal(() => {}, 50)).toMatch(/no answer within 0\.05 s/);
    const half: RequestListener = (_, response) =>
      void response.writeHead(200, { 'content-type': 'application/timestamp-reply' }).write('x');
    expect(await refusal(half, 200)).toMatch(/no whole answer within 0\.2 s/);
  });

  it('one that is not there', async () => {
    const url = await answering(() => {});
    const ask = askAt(url.replace(/:\d+\//, ':1/'), stampsBy([]));
    await expect(ask(TEXT, never)).rejects.toThrow('fetch failed');
  });

  describe.skipIf(!OPENSSL)('by OpenSSL', () => {
    let tsa: OtherAuthority;
    beforeAll(() => {
      tsa = new OtherAuthority();
      tsa.issue('signer');
    });
    afterAll(() => tsa.remove());

    it('is asked as RFC 3161 has it, and what it gives is kept as it came', async () => {
      let [type, accept] = ['', ''];
      const url = await answering((request, response) => {
        [type, accept] = [request.headers['content-type'] ?? '', request.headers.accept ?? ''];
        stamping(tsa, 'signer')(request, response);
      });
      const given = await askAt(url, stampsBy([tsa.certificate('root')]))(TEXT, never);
      expect([type, accept]).toEqual(['application/timestamp-query', 'application/timestamp-reply']);
      expect(given.checked).toMatchObject({ kind: 'proven', by: 'CN=Test stamps signer' });
      expect(stampsBy([tsa.certificate('root')])(TEXT, given)).toEqual(given.checked);
    });

    it('is refused where its certificate is not the one that was named', async () => {
      const other = new OtherAuthority('Other stamps');
      const root = other.certificate('root');
      other.remove();
      const ask = askAt(await answering(stamping(tsa, 'signer')), stampsBy([root]));
      await expect(ask(TEXT, never)).rejects.toThrow('proves nothing: other-authority');
    });

    it('is refused where it answers another question: that of another text, or an older one', async () => {
      const stale = tsa.reply(questionFor(TEXT, newNonce()), 'signer');
      const check = stampsBy([tsa.certificate('root')]);
      await expect(askAt(await answering(replyOf(stale)), check)(TEXT, never)).rejects.toThrow('nonce');
      const mixed: RequestListener = async (request, response) => {
        const { nonce } = AsnConvert.parse(await bodyOf(request), TimeStampReq);
        const other = questionFor('another text', Buffer.from(nonce ?? new ArrayBuffer(0)).toString('hex'));
        replyOf(tsa.reply(other, 'signer'))(request, response);
      };
      await expect(askAt(await answering(mixed), check)(TEXT, never)).rejects.toThrow('imprint');
    });

    it('is told with its own words where it refuses', async () => {
      // OpenSSL refuses a hash that its configuration does not name.
      const md5: RequestListener = async (request, response) => {
        const question = AsnConvert.parse(await bodyOf(request), TimeStampReq);
        question.messageImprint.hashAlgorithm.algorithm = '1.3.14.3.2.26';
        replyOf(tsa.reply(new Uint8Array(AsnConvert.serialize(question)), 'signer'))(request, response);
      };
      expect(await refusal(md5)).toMatch(/refused: status rejection, ".+"/);
    });
  });
});

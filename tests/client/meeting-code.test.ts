import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromCode, toCode } from '../../client/meeting/code.ts';

/**
 * Offers and answers with one data channel (RFC 8866, RFC 8841). The first as Chromium 140 wrote it here, with other keys and
 * addresses; those of Firefox and Safari from memory of what they write.
 */
const PRINT = Array.from({ length: 32 }, (_, i) =>
  ((i * 37 + 11) % 256).toString(16).padStart(2, '0').toUpperCase(),
).join(':');
const sdp = (...lines: string[]): string => `${lines.join('\r\n')}\r\n`;
const CHROMIUM = sdp(
  ...['v=0', 'o=- 5312709874412093311 2 IN IP4 127.0.0.1', 's=-', 't=0 0', 'a=group:BUNDLE 0'],
  ...['a=extmap-allow-mixed', 'a=msid-semantic: WMS', 'm=application 9 UDP/DTLS/SCTP webrtc-datachannel'],
  'c=IN IP4 0.0.0.0',
  'a=candidate:3719081293 1 udp 2113937151 7c1f8bb2-5c3a-4a35-8d0a-7d9f7f3f2b55.local 51234 typ host generation 0 network-cost 999',
  ...['a=ice-ufrag:Kq3Z', 'a=ice-pwd:k0yV1b2w3x4y5z6A7B8C9D0E', 'a=ice-options:trickle'],
  ...[`a=fingerprint:sha-256 ${PRINT}`, 'a=setup:actpass', 'a=mid:0', 'a=sctp-port:5000'],
  'a=max-message-size:262144',
);
const FIREFOX = sdp(
  ...['v=0', 'o=mozilla...THIS_IS_SDPARTA-99.0 8217340912387412345 0 IN IP4 0.0.0.0', 's=-', 't=0 0'],
  ...[`a=fingerprint:sha-256 ${PRINT}`, 'a=group:BUNDLE 0', 'a=ice-options:trickle', 'a=msid-semantic:WMS *'],
  ...['m=application 49222 UDP/DTLS/SCTP webrtc-datachannel', 'c=IN IP4 192.168.43.17'],
  'a=candidate:0 1 UDP 2122252543 192.168.43.17 49222 typ host',
  ...['a=sendrecv', 'a=end-of-candidates', 'a=ice-pwd:0123456789abcdef0123456789abcdef'],
  ...[
    'a=ice-ufrag:1a2b3c4d',
    'a=mid:0',
    'a=setup:active',
    'a=sctp-port:5000',
    'a=max-message-size:1073741823',
  ],
);

describe('the code of a meeting', () => {
  it.each([
    ['an offer of Chromium', 'offer', CHROMIUM],
    ['an answer of Firefox', 'answer', FIREFOX],
  ] as const)('R139: gives back %s whole', (_, kind, text) => {
    expect(fromCode(toCode(kind, text))).toEqual({ kind, sdp: text });
  });

  it('R139: is short enough for a square code that one phone reads off another', () => {
    // ISO/IEC 18004, table 7: version 13 at level L holds 425 bytes; at 340 points a cell of it is 4.6 wide.
    for (const text of [CHROMIUM, FIREFOX])
      expect(`https://ladder.firm.example/meet#${toCode('offer', text)}`.length).toBeLessThanOrEqual(425);
  });

  it('R139: leaves out addresses that go by TCP, which no data channel uses', () => {
    const tcp = 'a=candidate:1 1 tcp 1518280447 192.168.43.17 9 typ host tcptype active generation 0\r\n';
    const read = fromCode(toCode('offer', CHROMIUM.replace('a=ice-ufrag', `${tcp}a=ice-ufrag`)));
    expect(read?.sdp).toBe(CHROMIUM);
  });

  it('R139: is read from a whole link, and from a text that was cut into lines', () => {
    const code = toCode('answer', FIREFOX);
    const cut = code.replace(/.{40}/g, '$&\n ');
    for (const text of [`https://ladder.firm.example/meet#${code}`, cut, `  ${code}\n`])
      expect(fromCode(text)).toEqual({ kind: 'answer', sdp: FIREFOX });
  });

  it('R139: that is cut short, changed or none at all is nothing', () => {
    const code = toCode('offer', CHROMIUM);
    for (const text of ['', 'ABC234', 'O', 'A', code.slice(1), `X${code.slice(1)}`, `O${'A'.repeat(3_000)}`])
      expect(fromCode(text)).toBeUndefined();
    fc.assert(fc.property(fc.string(), (text) => fromCode(`O${text}`) === undefined));
    for (let end = 1; end < code.length - 4; end += 7)
      expect(fromCode(code.slice(0, end))?.sdp).not.toBe(CHROMIUM);
  });
});

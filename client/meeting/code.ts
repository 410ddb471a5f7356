import { deflateSync, inflateSync, strFromU8, strToU8 } from 'fflate';

/**
 * What one phone must know to reach another (SDP), as a code that a square holds and a message can carry: packed, and without what
 * only another network than this one needs.
 */

export type Kind = 'offer' | 'answer';
const LETTER_OF = { offer: 'O', answer: 'A' } as const satisfies Record<Kind, string>;

/** Lines as browsers write them: what stands here costs a code almost nothing. Changed, it needs another letter for each kind. */
const USUAL = strToU8(
  `v=0\r\no=- 4611731400430051336 2 IN IP4 127.0.0.1\r\ns=-\r\nt=0 0\r\na=group:BUNDLE 0\r\na=extmap-allow-mixed\r\na=msid-semantic: WMS\r
o=mozilla...THIS_IS_SDPARTA-99.0 4611731400430051336 0 IN IP4 0.0.0.0\r\na=sendrecv\r\na=msid-semantic:WMS *\r
a=candidate:1 1 UDP 2122252543 .local 9 typ host\r\na=end-of-candidates\r
m=application 9 UDP/DTLS/SCTP webrtc-datachannel\r\nc=IN IP4 0.0.0.0\r
a=candidate:842163049 1 udp 2122260223 192.168.1.10 54321 typ host generation 0 network-id 1 network-cost 10\r
a=candidate:842163049 1 udp 2113937151 0a1b2c3d-4e5f-6789-abcd-ef0123456789.local 54321 typ host generation 0 network-cost 999\r
a=ice-ufrag:aBcD\r\na=ice-pwd:\r\na=ice-options:trickle\r\na=fingerprint:sha-256 00:11:22:33:44:55:66:77:88:99:AA:BB:CC:DD:EE:FF\r
a=setup:actpass\r\na=setup:active\r\na=mid:0\r\na=sctp-port:5000\r\na=max-message-size:262144\r\na=max-message-size:1073741823\r\n`,
);

/** Data channels go by UDP. */
const BY_TCP = /^a=candidate:\S+ \d+ tcp .*\r?\n/gim;

export function toCode(kind: Kind, sdp: string): string {
  const packed = deflateSync(strToU8(sdp.replace(BY_TCP, '')), { level: 9, dictionary: USUAL });
  return LETTER_OF[kind] + toBase64Url(packed);
}

/** What a code says; also where a whole link was scanned, or a text was cut into lines. Undefined: it is none. */
export function fromCode(text: string): { kind: Kind; sdp: string } | undefined {
  const code = text.slice(text.lastIndexOf('#') + 1).replace(/\s/g, '');
  const kind = (['offer', 'answer'] as const).find((each) => code.startsWith(LETTER_OF[each]));
  if (!kind || code.length > LONGEST) return undefined;
  try {
    const sdp = strFromU8(inflateSync(fromBase64Url(code.slice(1)), { dictionary: USUAL }));
    return sdp.startsWith('v=0') && sdp.includes('a=fingerprint:') ? { kind, sdp } : undefined;
  } catch {
    return undefined;
  }
}

/** Longer than any square code that a phone can read off another. */
const LONGEST = 2_000;

const toBase64Url = (bytes: Uint8Array): string =>
  btoa(String.fromCharCode(...bytes))
    .replace(/[+]/g, '-')
    .replace(/[/]/g, '_')
    .replace(/=+$/, '');

const fromBase64Url = (text: string): Uint8Array =>
  Uint8Array.from(atob(text.replace(/-/g, '+').replace(/_/g, '/')), (letter) => letter.charCodeAt(0));

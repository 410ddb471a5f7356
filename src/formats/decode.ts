export type Encoding = 'UTF-8' | 'UTF-16' | 'Windows-1252';

/**
 * What the bytes of a text file say. UTF-8 is tried first; another file is never valid UTF-8 by chance for long.
 * UTF-16 has its byte order mark. All else is read as Windows-1252, in which spreadsheets save CSV; its five
 * undefined bytes become the control characters U+0081, U+008D, U+008F, U+0090 and U+009D. Undefined: no text.
 */
export function decodeText(bytes: Uint8Array): { text: string; encoding: Encoding } | undefined {
  const utf16 = utf16Of(bytes);
  if (utf16) {
    const text = decoded(bytes, utf16);
    return text === undefined ? undefined : { text, encoding: 'UTF-16' };
  }
  const text = decoded(bytes, 'utf-8');
  if (text !== undefined) return { text, encoding: 'UTF-8' };
  return { text: windows1252(bytes), encoding: 'Windows-1252' };
}

function utf16Of([first, second]: Uint8Array): string | undefined {
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  return first === 0xfe && second === 0xff ? 'utf-16be' : undefined;
}

function decoded(bytes: Uint8Array, encoding: string): string | undefined {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/**
 * Bytes 80 to 9F of Windows-1252 (WHATWG Encoding Standard, index windows-1252, from memory). Here in full,
 * because the decoder of some versions of Node.js takes them for Latin 1.
 */
const FROM_80 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008DŽ\u008F\u0090‘’“”•–—˜™š›œ\u009DžŸ';

const windows1252 = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) => FROM_80[byte - 0x80] ?? String.fromCharCode(byte)).join('');

/** What a JPEG says of its picture, or why it is none that can be kept. */
export type JpegHeader =
  | { readonly kind: 'picture'; readonly width: number; readonly height: number }
  | { readonly kind: 'fault'; readonly fault: JpegFault };
export type JpegFault = 'not-jpeg' | 'cut' | 'metadata' | 'colours';

/** Second bytes of markers, behind FF: ISO/IEC 10918-1 (ITU-T T.81), table B.1. */
const START = 0xd8;
const END = 0xd9;
const SCAN = 0xda;
const COMMENT = 0xfe;
/** Application segments carry anything, by the name they begin with: Exif, XMP, notes of programs, a second picture. */
const APP = { first: 0xe0, last: 0xef } as const;
/** These three say only how the picture is to be shown. */
const HARMLESS: Readonly<Record<number, string>> = { 224: 'JFIF\0', 226: 'ICC_PROFILE\0', 238: 'Adobe' };
/** Frames that every reader knows: baseline, extended and progressive, coded by Huffman. */
const FRAMES: ReadonlySet<number> = new Set([0xc0, 0xc1, 0xc2]);
/** Grey, or the three of a photo; four are those of a printing press. */
const COLOURS: ReadonlySet<number> = new Set([1, 3]);

/**
 * Walks through a JPEG marker by marker. No segment may carry notes of a camera or of a program, and nothing may stand behind
 * the end of the picture: what is kept shows the picture and tells no more.
 */
export function readJpeg(file: Uint8Array): JpegHeader {
  let size: { width: number; height: number } | undefined;
  let scanned = false;
  for (const { marker, from, to } of segments(file)) {
    if (marker === undefined) return fault('not-jpeg');
    if (isNote(marker, file.subarray(from + 4, to))) return fault('metadata');
    if (to > file.length) return fault('cut');
    if (marker === END) {
      if (to < file.length) return fault('metadata');
      return size && scanned ? { kind: 'picture', ...size } : fault('not-jpeg');
    }
    if (marker === SCAN) scanned = true;
    if (!FRAMES.has(marker)) continue;
    if (size || to - from < 10) return fault('not-jpeg');
    if (!COLOURS.has(file[from + 9] as number)) return fault('colours');
    const view = new DataView(file.buffer, file.byteOffset + from);
    size = { height: view.getUint16(5), width: view.getUint16(7) };
  }
  return fault('cut');
}

/** The same picture without notes of a camera or of a program. Some browsers write them into what they draw. */
export function withoutNotes(file: Uint8Array): Uint8Array {
  const kept = [file.subarray(0, 2)];
  for (const { marker, from, to } of segments(file)) {
    if (marker === undefined) return file;
    if (!isNote(marker, file.subarray(from + 4, to))) kept.push(file.subarray(from, to));
  }
  const whole = new Uint8Array(kept.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of kept) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

interface Segment {
  /** Undefined where no marker stands; then nothing follows. */
  readonly marker: number | undefined;
  /** Of its FF, and behind its last byte: beyond the end of a file that is cut. A scan has its coded picture with it. */
  readonly from: number;
  readonly to: number;
}

/** All segments behind the first marker, as far as they can be told. */
function* segments(file: Uint8Array): Generator<Segment> {
  if (file[0] !== 0xff || file[1] !== START) {
    yield { marker: undefined, from: 0, to: file.length };
    return;
  }
  for (let from = 2; from < file.length; ) {
    let at = from;
    // Any number of FF may stand before the second byte of a marker (B.1.1.2).
    while (file[at] === 0xff && file[at + 1] === 0xff) at += 1;
    if (file[at] !== 0xff) {
      yield { marker: undefined, from, to: file.length };
      return;
    }
    const marker = file[at + 1];
    if (marker === undefined) return;
    if (marker === END) {
      yield { marker, from: at, to: at + 2 };
      return;
    }
    const length = ((file[at + 2] ?? 0) << 8) | (file[at + 3] ?? 0);
    // The length counts its own two bytes.
    const next = at + 2 + Math.max(length, 2);
    const to = marker === SCAN ? afterScan(file, next) : next;
    yield { marker: length < 2 && at + 4 <= file.length ? undefined : marker, from: at, to };
    from = to;
  }
}

/** Where the next marker stands that does not belong to the coded picture itself. */
function afterScan(file: Uint8Array, from: number): number {
  for (let at = file.indexOf(0xff, from); at !== -1; at = file.indexOf(0xff, at + 2)) {
    const next = file[at + 1] ?? 0;
    // FF 00 is a byte of the picture, FF D0 to D7 are marks to begin anew at.
    if (next !== 0 && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return Math.max(from, file.length);
}

/** `body`: of the segment, behind its length. */
function isNote(marker: number, body: Uint8Array): boolean {
  if (marker < APP.first || marker > APP.last) return marker === COMMENT;
  const name = HARMLESS[marker];
  return name === undefined || [...name].some((letter, i) => body[i] !== letter.charCodeAt(0));
}

const fault = (which: JpegFault): JpegHeader => ({ kind: 'fault', fault: which });

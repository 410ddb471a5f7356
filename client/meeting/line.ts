import {
  ANOTHER_MEETING,
  CANNOT_MEET,
  NOT_A_CODE,
  NOT_REACHED,
  OTHER_CODE,
} from '../../src/phrases/meeting.ts';
import { Sitter } from '../../src/protocol/access.ts';
import { SeatAnswer } from '../../src/protocol/meeting.ts';
import { hostGuest } from '../here/guest.ts';
import { roomOf } from '../here/open-rooms.ts';
import { newToken } from '../here/room-here.ts';
import { fromCode, type Kind, toCode } from './code.ts';
import { keepLine } from './kept-line.ts';

/** Two phones find each other: one makes an offer, the other answers it, and both codes are carried by people. No server is asked. */

/** Why they did not, for people. */
export class NotMet extends Error {
  override name = 'NotMet';
}

/** A browser that has found no address by now finds none. */
const GATHERED_WITHIN_MS = 3_000;
/** So long may two phones that have each other's code take. */
const REACHED_WITHIN_MS = 20_000;
/** Whoever waits for its code to be scanned tries again: what it tries meanwhile ends by itself. */
const TRY_AGAIN_MS = 3_000;

const newPeer = (): RTCPeerConnection => {
  if (!globalThis.RTCPeerConnection) throw new NotMet(CANNOT_MEET);
  return new RTCPeerConnection();
};

async function codeOf(peer: RTCPeerConnection, kind: Kind): Promise<string> {
  await peer.setLocalDescription();
  if (peer.iceGatheringState !== 'complete')
    await new Promise<void>((resolve) => {
      setTimeout(resolve, GATHERED_WITHIN_MS);
      peer.addEventListener('icegatheringstatechange', () => {
        if (peer.iceGatheringState === 'complete') resolve();
      });
    });
  return toCode(kind, peer.localDescription?.sdp ?? '');
}

/** @throws {NotMet} */
function sdpIn(text: string, kind: Kind): string {
  const read = fromCode(text);
  if (!read) throw new NotMet(NOT_A_CODE);
  if (read.kind !== kind) throw new NotMet(OTHER_CODE[kind === 'answer' ? 'panel' : 'emitter']);
  return read.sdp;
}

export interface Offered {
  code: string;
  /** With the code of the other phone. Resolves when it sits at the emitter. @throws {NotMet} */
  accept(text: string): Promise<void>;
  /** Whether it still takes a code. */
  isOpen(): boolean;
  /** Unless they have met, nothing is waited for any more. */
  close(): void;
}

/** The line to the phone that this one has met last. A new one takes its place. */
let hosted: RTCPeerConnection | undefined;

/** At the panel: the phone that answers gets the seat at the emitter. @throws {NotMet} */
export async function offerLine(job: string): Promise<Offered> {
  const peer = newPeer();
  const first = peer.createDataChannel('seat');
  const met = new Promise<void>((resolve, reject) => {
    first.onmessage = async ({ data }) => {
      const answer = await seatAt(job, data);
      if (first.readyState === 'open') first.send(JSON.stringify(answer));
      if (answer.t === 'refused') return reject(new NotMet(answer.text));
      hosted?.close();
      hosted = peer;
      const room = await roomOf(job);
      peer.ondatachannel = ({ channel }) => hostGuest(room, channel);
      resolve();
    };
  });
  // It may be refused before anybody waits for it.
  met.catch(() => undefined);
  return {
    code: await codeOf(peer, 'offer'),
    async accept(text) {
      const sdp = sdpIn(text, 'answer');
      if (peer.signalingState !== 'have-local-offer') throw new NotMet(ANOTHER_MEETING);
      await peer.setRemoteDescription({ type: 'answer', sdp }).catch(() => {
        throw new NotMet(ANOTHER_MEETING);
      });
      await within(met);
    },
    isOpen: () => peer.signalingState === 'have-local-offer',
    close() {
      if (hosted !== peer) peer.close();
    },
  };
}

async function seatAt(job: string, data: unknown): Promise<SeatAnswer> {
  const sitter = Sitter.safeParse(parsed(data)).data;
  if (!sitter) return { t: 'refused', reason: 'bad-message', text: NOT_A_CODE };
  const room = await roomOf(job);
  const outcome = await room.seatGuest(sitter);
  if (outcome.kind === 'refused') return { t: 'refused', reason: outcome.reason, text: outcome.text };
  return { t: 'seated', job, token: newToken(), title: room.title };
}

export interface Answered {
  code: string;
  /** Resolves when this phone sits at the emitter. @throws {NotMet} */
  seated: Promise<Extract<SeatAnswer, { t: 'seated' }>>;
  close(): void;
}

/** At the emitter, with the code of the panel's phone. @throws {NotMet} */
export async function answerLine(text: string, sitter: () => Sitter): Promise<Answered> {
  const sdp = sdpIn(text, 'offer');
  const peer = newPeer();
  let isKept = false;
  const seated = new Promise<Extract<SeatAnswer, { t: 'seated' }>>((resolve, reject) => {
    peer.ondatachannel = ({ channel }) => {
      channel.onopen = () => channel.send(JSON.stringify(sitter()));
      channel.onmessage = ({ data }) => {
        const answer = SeatAnswer.safeParse(parsed(data)).data;
        if (answer?.t !== 'seated') return reject(new NotMet(answer?.text ?? NOT_A_CODE));
        isKept = true;
        keepLine(peer);
        resolve(answer);
      };
    };
  });
  seated.catch(() => undefined);
  // Its addresses come later: what is tried before the other phone has scanned our code fails, and some browsers give up then.
  const places = sdp.match(/^a=candidate:.*$/gm) ?? [];
  await peer
    .setRemoteDescription({
      type: 'offer',
      sdp: sdp.replace(/^a=(?:candidate|end-of-candidates).*\r?\n/gm, ''),
    })
    .catch(() => {
      throw new NotMet(NOT_A_CODE);
    });
  const code = await codeOf(peer, 'answer');
  const trying = setInterval(() => {
    if (peer.connectionState === 'connected' || peer.connectionState === 'closed')
      return clearInterval(trying);
    for (const place of places)
      void peer
        .addIceCandidate({ candidate: place.slice('a='.length), sdpMLineIndex: 0 })
        .catch(() => undefined);
  }, TRY_AGAIN_MS);
  return {
    code,
    seated,
    close() {
      if (isKept) return;
      clearInterval(trying);
      peer.close();
    },
  };
}

const within = (met: Promise<void>): Promise<void> =>
  Promise.race([
    met,
    new Promise<never>((_, reject) => setTimeout(() => reject(new NotMet(NOT_REACHED)), REACHED_WITHIN_MS)),
  ]);

function parsed(data: unknown): unknown {
  try {
    return typeof data === 'string' ? JSON.parse(data) : undefined;
  } catch {
    return undefined;
  }
}

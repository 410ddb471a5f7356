import { useEffect, useRef, useState } from 'preact/hooks';
import { resampler } from '../../src/audio/resample.ts';
import { type Ear, earFrom, type Heard, heardAt } from '../../src/indicator/hear.ts';
import { type MicrophoneError, openMicrophone } from '../audio/microphone.ts';
import type { Source, Taken } from './use-following.ts';

/** What sounds at panels lies far below half of this. Samples a second. */
const RATE = 16_000;
/** A tenth of a second. */
const PIECE = 1_600;

/** Opens the microphone while it is mounted, as it is: what improves speech takes away tones. */
export function useTone(onMoment: (moment: Heard) => void): Source<Heard> {
  const [fault, setFault] = useState<string>();
  const [noLevel, setNoLevel] = useState(false);
  const ear = useRef<Ear>(undefined);
  const newest = useRef(onMoment);
  newest.current = onMoment;
  useEffect(() => {
    let closed = false;
    let pieces: ReturnType<typeof inPieces> | undefined;
    const opening = openMicrophone((block) => pieces?.(block), 'sound');
    opening.then(
      (microphone) => {
        if (closed) return;
        setNoLevel(microphone.changesLoudness);
        pieces = inPieces(microphone.rate, (piece) =>
          newest.current(heardAt(performance.now(), piece, RATE, ear.current)),
        );
      },
      (error: MicrophoneError) => setFault(error.message),
    );
    return () => {
      closed = true;
      opening.then(
        (microphone) => microphone.close(),
        () => undefined,
      );
    };
  }, []);
  return {
    fault,
    noLevel,
    prepare() {
      ear.current = undefined;
    },
    keep({ moments, some, plenty }: Taken<Heard>, profile) {
      ear.current = earFrom(moments.none, some, plenty, profile);
    },
  };
}

/** Blocks of any length at the phone's rate become pieces of one length at ours. */
function inPieces(rate: number, onPiece: (piece: Float32Array) => void): (block: Float32Array) => void {
  const to16k = resampler(rate, RATE);
  let piece = new Float32Array(PIECE);
  let filled = 0;
  return (block) => {
    for (const sample of to16k.push(block)) {
      piece[filled++] = sample;
      if (filled < PIECE) continue;
      onPiece(piece);
      piece = new Float32Array(PIECE);
      filled = 0;
    }
  };
}

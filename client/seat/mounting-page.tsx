import { Mounting } from '../../src/model/mounting.ts';
import { CANNOT_SEE_YET, HOW_MOUNTED, HOW_MOUNTED_WHY, MOUNTING_NAMES } from '../../src/phrases/mounting.ts';
import { Mark } from '../ui/mark.tsx';
import type { Asked } from './use-mounting-asked.ts';

/** One large key for each way to hang, with a drawing of it. */
export const MountingPage = ({ onAnswer }: { onAnswer: Asked['answer'] }) => (
  <main class="page cautions-page">
    <header class="cautions-head">
      <Mark size={44} />
      <h1>{HOW_MOUNTED}</h1>
    </header>
    <p>{HOW_MOUNTED_WHY}</p>
    <MountingKeys onPick={onAnswer} />
    <button type="button" class="button" onClick={() => onAnswer(undefined)}>
      {CANNOT_SEE_YET}
    </button>
  </main>
);

export const MountingKeys = ({
  now,
  onPick,
}: {
  now?: Mounting | undefined;
  onPick: (m: Mounting) => void;
}) => (
  <div class="mountings">
    {Mounting.options.map((mounting) => (
      <button
        key={mounting}
        type="button"
        class="button"
        aria-pressed={now && now === mounting}
        onClick={() => onPick(mounting)}
      >
        <Unit mounting={mounting} />
        {MOUNTING_NAMES[mounting]}
      </button>
    ))}
  </div>
);

/** Clockwise, in degrees. */
const TURNED: Readonly<Record<Mounting, number>> = {
  upright: 0,
  'top-right': 90,
  'upside-down': 180,
  'top-left': 270,
};

/** The front of a unit, with a bar along its top and an arrow out of it. */
const Unit = ({ mounting }: { mounting: Mounting }) => (
  <svg class="mounting-drawing" viewBox="-50 -50 100 100" aria-hidden="true">
    <g transform={`rotate(${TURNED[mounting]})`}>
      <rect class="mounting-case" x="-20" y="-20" width="40" height="56" rx="4" />
      <rect class="mounting-top" x="-20" y="-20" width="40" height="10" />
      <circle class="mounting-lens" cy="14" r="11" />
      <path class="mounting-arrow" d="M0 -46 12 -30H4V-22H-4V-30H-12z" />
    </g>
  </svg>
);

import type { Action } from '../../src/model/advice.ts';
import type { Cover } from '../../src/model/checklists.ts';
import { amountGlyph, senseWord } from '../../src/phrases/amounts.ts';
import { arcPath, arrowHead, pointAt, winds } from './screw.ts';

/** The picture of an instruction. Some have none: words are better. */
export function Drawing({ action }: { action: Action }) {
  switch (action.kind) {
    case 'turn':
      return <Screw {...action} />;
    case 'read':
      return <Dial />;
    case 'gain':
      return <Gain change={action.change} />;
    case 're-aim':
      return <Aim />;
    case 'offer-accept':
    case 'offer-sign':
    case 'finished':
      return <Tick />;
    case 'block':
      return <Path blocked={true} />;
    case 'cover':
      return <Covered how={action.how} />;
    case 'confirm-item':
      return <List />;
    case 'watch-panel':
      // A countdown is picture enough.
      return action.until === undefined ? <PanelLamps /> : null;
    case 'settle-issue':
      return <Pen />;
    case 'unblock':
    case 'uncover':
      return <Path blocked={false} />;
    default:
      return null;
  }
}

const EIGHTH_MARKS = [0, 1, 2, 3, 4, 5, 6, 7];

/** The head of the screw and how to turn it. Dotted: the slot now. Bold: the slot after the turn. */
function Screw({ axis, eighths }: Extract<Action, { kind: 'turn' }>) {
  return (
    <svg
      class={`screw screw-${axis}`}
      viewBox="-100 -99 200 198"
      role="img"
      aria-label={`${amountGlyph(eighths)} turn, ${senseWord(eighths)}`}
    >
      {EIGHTH_MARKS.map((mark) => {
        const from = pointAt(mark, 57);
        const to = pointAt(mark, mark % 2 ? 63 : 67);
        return <path key={mark} class="screw-mark" d={`M${from.x} ${from.y}L${to.x} ${to.y}`} />;
      })}
      <circle class="screw-head" r={50} />
      <path class="screw-slot-now" d="M0 -40V40" />
      <g class="screw-slot" transform={`rotate(${eighths * 45})`}>
        <path d="M0 42V-40" />
        <path d="M-9 -26 0 -42 9 -26" />
      </g>
      <path class={winds(eighths) ? 'screw-arc winding' : 'screw-arc'} d={arcPath(eighths)} />
      <polygon class="screw-arrow" points={arrowHead(eighths)} />
    </svg>
  );
}

const Dial = () => (
  <svg class="picture" viewBox="0 0 220 120" aria-hidden="true">
    <path class="picture-line" d="M40 104a70 70 0 0 1 140 0" />
    <path class="picture-line" d="M56 62l10 8M110 34v14M164 62l-10 8" />
    <path class="picture-light" d="M110 104 142 58" />
    <circle class="picture-plate" cx="110" cy="104" r="7" />
  </svg>
);

const Tick = () => (
  <svg class="picture" viewBox="0 0 220 120" aria-hidden="true">
    <circle class="picture-line" cx="110" cy="60" r="54" />
    <path class="picture-tick" d="M82 62 102 82 140 40" />
  </svg>
);

const Gain = ({ change }: { change: 'lower' | 'raise' | 'full' }) => (
  <svg class="picture" viewBox="0 0 220 120" aria-hidden="true">
    <path class="picture-line" d="M20 100H200V30z" />
    <path class="picture-fill" d={change === 'full' ? 'M20 100H200V30z' : 'M20 100H110V65z'} />
    {change === 'lower' && <path class="picture-arrow" d="M190 18H126m16-11-16 11 16 11" />}
    {change === 'raise' && <path class="picture-arrow" d="M90 18h64m-16-11 16 11-16 11" />}
  </svg>
);

const Aim = () => (
  <svg class="picture" viewBox="0 0 220 120" aria-hidden="true">
    <path class="picture-line" d="M16 44h26v32H16z" />
    <path class="picture-light" d="M42 60h116" />
    <circle class="picture-line" cx="172" cy="60" r="44" stroke-dasharray="8 7" />
    <path class="picture-line" d="M162 44h20v32h-20z" />
  </svg>
);

const Path = ({ blocked }: { blocked: boolean }) => (
  <svg class="picture" viewBox="0 0 220 120" aria-hidden="true">
    <path class="picture-line" d="M10 44h26v32H10zM184 44h26v32h-26z" />
    <path class="picture-light" d={blocked ? 'M36 60h58' : 'M36 60h148'} />
    <path class="picture-plate" d={blocked ? 'M96 14h18v92H96z' : 'M96 84h18v32H96z'} />
    {!blocked && <path class="picture-arrow" d="M140 84v28m-8-10 8 12 8-12" />}
  </svg>
);

/** The front of the receiver, and how much of it is covered. A filter lets some light through. */
const Covered = ({ how }: { how: Cover }) => (
  <svg class="picture" viewBox="0 0 220 120" aria-hidden="true">
    <path class="picture-light" d="M10 34h50M10 60h50M10 86h50" />
    <path class="picture-line" d="M84 10h100v100H84z" />
    {how === 'full' && <path class="picture-plate" d="M84 10h100v100H84z" />}
    {how === 'half' && <path class="picture-plate" d="M134 10h50v100h-50z" />}
    {how === 'filter' && (
      <path
        class="picture-line"
        d="M84 30 104 10M84 60l50-50M84 90l80-80M104 110l80-80M134 110l50-50M164 110l20-20"
      />
    )}
  </svg>
);

const List = () => (
  <svg class="picture" viewBox="0 0 220 120" aria-hidden="true">
    <path class="picture-line" d="M94 26h70M94 60h70M94 94h70" />
    <path class="picture-light" d="M56 26l8 8 14-16" />
    <path class="picture-line" d="M54 50h20v20H54zM54 84h20v20H54z" />
  </svg>
);

const PanelLamps = () => (
  <svg class="picture" viewBox="0 0 220 120" aria-hidden="true">
    <path class="picture-line" d="M50 8h120v104H50z" />
    <path class="picture-line" d="M66 24h88v34H66z" />
    <circle class="picture-line" cx="76" cy="86" r="8" />
    <circle class="picture-line" cx="110" cy="86" r="8" />
    <circle class="picture-line" cx="144" cy="86" r="8" />
  </svg>
);

const Pen = () => (
  <svg class="picture" viewBox="0 0 220 120" aria-hidden="true">
    <path class="picture-line" d="M46 108h128" />
    <path class="picture-line" d="M74 92l8-26 62-58 18 18-62 58z" />
    <path class="picture-light" d="M74 92l8-26 18 18z" />
  </svg>
);

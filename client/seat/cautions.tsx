import type { Seat } from '../../src/model/facts.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { cautionsOf, KEEP_AWAKE } from '../../src/phrases/cautions.ts';
import { HANDS_FREE_OFF, HANDS_FREE_ON } from '../../src/phrases/hands-free.ts';
import { WARNINGS_TITLE } from '../../src/phrases/plan-warnings.ts';
import { Mark } from '../ui/mark.tsx';
import { WarningList } from '../ui/warning-list.tsx';

interface CautionsProps {
  seat: Seat;
  /** What the plan check warns of: it stands first, for it is about this pair and no other. Undefined: not
   * known yet, and nobody can have understood it. */
  warnings: readonly string[] | undefined;
  setup: JobSetup | undefined;
  /** Talk without a button from the start; undefined: this phone does not hear anybody. */
  handsFree: boolean | undefined;
  onHandsFree: (on: boolean) => void;
  onAgree: () => void;
}

/** Before the first instruction. The tap on the button also allows the phone to speak. */
export const CautionsPage = ({ seat, warnings, setup, handsFree, onHandsFree, onAgree }: CautionsProps) => (
  <main class="page cautions-page">
    <header class="cautions-head">
      <Mark size={44} />
      <h1>{seat === 'emitter' || setup?.alone ? 'Before you climb' : 'Before they climb'}</h1>
    </header>
    {handsFree !== undefined && (
      <button type="button" class="button" aria-pressed={handsFree} onClick={() => onHandsFree(!handsFree)}>
        {handsFree ? HANDS_FREE_ON : HANDS_FREE_OFF}
      </button>
    )}
    <WarningList title={WARNINGS_TITLE} texts={warnings ?? []} />
    <CautionList setup={setup} />
    {!('wakeLock' in navigator) && <p class="hint">{KEEP_AWAKE}</p>}
    <button type="button" class="button main huge" disabled={!warnings} onClick={onAgree}>
      {warnings ? 'Understood' : 'Loading'}
    </button>
  </main>
);

export const CautionList = ({ setup }: { setup: JobSetup | undefined }) => (
  <ul class="cautions">
    {cautionsOf(setup).map((caution) => (
      <li key={caution}>{caution}</li>
    ))}
  </ul>
);

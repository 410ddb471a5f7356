import type { Seat } from '../../src/model/facts.ts';
import { CAUTIONS } from '../../src/phrases/cautions.ts';
import { WARNINGS_TITLE } from '../../src/phrases/plan-warnings.ts';
import { Mark } from '../ui/mark.tsx';
import { WarningList } from '../ui/warning-list.tsx';

interface CautionsProps {
  seat: Seat;
  /** What the plan check warns of: it stands first, for it is about this pair and no other. Undefined: not
   * known yet, and nobody can have understood it. */
  warnings: readonly string[] | undefined;
  onAgree: () => void;
}

/** Before the first instruction. The tap on the button also allows the phone to speak. */
export const CautionsPage = ({ seat, warnings, onAgree }: CautionsProps) => (
  <main class="page cautions-page">
    <header class="cautions-head">
      <Mark size={44} />
      <h1>{seat === 'emitter' ? 'Before you climb' : 'Before they climb'}</h1>
    </header>
    <WarningList title={WARNINGS_TITLE} texts={warnings ?? []} />
    <CautionList />
    <button type="button" class="button main huge" disabled={!warnings} onClick={onAgree}>
      {warnings ? 'Understood' : 'Loading'}
    </button>
  </main>
);

export const CautionList = () => (
  <ul class="cautions">
    {CAUTIONS.map((caution) => (
      <li key={caution}>{caution}</li>
    ))}
  </ul>
);

import type { Seat } from '../../src/model/facts.ts';
import { CAUTIONS } from '../../src/phrases/cautions.ts';
import { Mark } from '../ui/mark.tsx';

/** Before the first instruction. The tap on the button also allows the phone to speak. */
export const CautionsPage = ({ seat, onAgree }: { seat: Seat; onAgree: () => void }) => (
  <main class="page cautions-page">
    <header class="cautions-head">
      <Mark size={44} />
      <h1>{seat === 'emitter' ? 'Before you climb' : 'Before they climb'}</h1>
    </header>
    <CautionList />
    <button type="button" class="button main huge" onClick={onAgree}>
      Understood
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

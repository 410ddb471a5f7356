import { VisitRecord } from '../../src/record/visit-record.ts';
import { cleanVisit } from '../findings/clean-visit.ts';

/** How many simulated visits without a fault end signed and without a finding. The argument says how many visits. */
const count = Number(process.argv[2] ?? 1_000);
let clean = 0;
for (let seed = 1; seed <= count; seed++) {
  const entries = cleanVisit(seed);
  const isSigned = entries.some(({ fact }) => fact.type === 'signed');
  const found = new VisitRecord({ entries }).findings.map(({ id }) => id);
  if (isSigned && found.length === 0) clean += 1;
  else
    console.log(`seed ${seed}: ${isSigned ? 'signed' : 'NOT SIGNED'}, ${found.join(', ') || 'no finding'}`);
}
console.log(`${clean} of ${count} visits without a fault ended signed and without a finding`);

import type { Entry } from '../model/entry.ts';
import type { Fact } from '../model/facts.ts';
import { bySeverity, type Severity } from '../model/finding.ts';
import { isIsolated } from '../visit/progress.ts';
import { keepsSignature } from '../visit/state.ts';
import type { Visit } from '../visit/visit.ts';
import { found, type Look } from './look.ts';

/** How serious a change after the signature is, by what it does to the detector. */
export const changedSinceSigned: Look = (visit) => {
  const { entries, end } = visit;
  const { signed, changedBy } = end;
  if (!signed || changedBy === undefined) return [];
  const [worst] = bySeverity(
    entries
      .slice(signed.seq + 1)
      .filter(({ fact }) => !keepsSignature(fact))
      .map((entry) => ({ seq: entry.seq, severity: severityOf(entry.fact, visit) })),
  );
  if (!worst) return [];
  const seqs = [...new Set([signed.seq, changedBy, worst.seq])];
  return [found('changed-since-signed', { severity: worst.severity, entries: seqs })];
};

function severityOf(fact: Fact, visit: Visit): Severity {
  switch (fact.type) {
    case 'said':
    case 'unheard':
    case 'remark':
    case 'watcher-remark':
    case 'mounted':
    case 'sound':
    case 'readback':
    case 'query':
    case 'pause':
    case 'resume':
    case 'photo':
      return 'note';
    case 'move':
    case 'gain':
    case 're-aimed':
    case 'disturbed':
    case 'accept':
    case 'issue-opened':
    case 'stopped':
      return 'serious';
    case 'path':
      return fact.state === 'clear' || lastPath(visit) === 'clear' ? 'question' : 'serious';
    case 'item':
      return severityOfAnswer(fact, visit);
    case 'retract':
      return severityOfTakingBack(visit.entries[fact.target], visit);
    default:
      return 'question';
  }
}

const lastPath = ({ commission }: Visit) => {
  const path = commission.counted.findLast((each) => each.type === 'path');
  return path?.type === 'path' ? path.state : 'clear';
};

function severityOfAnswer({ item, done }: Extract<Fact, { type: 'item' }>, { commission }: Visit): Severity {
  if (item !== 'outputs-isolated') return done ? 'question' : 'serious';
  return isIsolated(commission) ? 'serious' : 'question';
}

/** Taking back a turn is as serious as the turn; taking back a remark leaves a question all the same. */
function severityOfTakingBack(target: Entry | undefined, visit: Visit): Severity {
  if (!target || target.fact.type === 'retract') return 'serious';
  return severityOf(target.fact, visit) === 'serious' ? 'serious' : 'question';
}

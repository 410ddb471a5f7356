import type { Severity } from '../model/finding.ts';
import { checkSetup, type FigureId } from '../plan/check.ts';
import { found, type Look } from './look.ts';

/**
 * Beyond what the maker allows the detector may not do what it is made for. A limit of guidance or common practice is
 * for those to judge who know the site.
 */
const SEVERITY: { readonly [id in FigureId]?: Severity } = { 'path-length': 'serious' };

/** A filter that looks like a lost beam matters where it was used, and is told there. */
const TOLD_ELSEWHERE: ReadonlySet<FigureId> = new Set<FigureId>(['filter']);

/** What the plan of the visit had outside a limit. The visit began all the same. */
export const planWarning: Look = ({ commission: { setup }, entries }) =>
  checkSetup(setup)
    .filter(({ id, warns }) => warns && !TOLD_ELSEWHERE.has(id))
    .map(({ id, value, unit, least, most, by }) =>
      found('plan-warning', {
        severity: SEVERITY[id] ?? 'question',
        // The entry that opened the visit holds its plan.
        entries: entries.slice(0, 1).map(({ seq }) => seq),
        about: [id, unit, by ?? ''],
        figures: {
          value,
          ...(least !== undefined && { least }),
          ...(most !== undefined && { most }),
        },
      }),
    );

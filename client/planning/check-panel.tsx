import { heldText } from '../../src/phrases/held.ts';
import { figureText, limitsText, planFigureWords } from '../../src/phrases/plan.ts';
import { GUIDANCE_ONLY, planFigureOrigin } from '../../src/phrases/plan-formulas.ts';
import { NO_WARNINGS } from '../../src/phrases/plan-warnings-desk.ts';
import type { Shown } from '../../src/phrases/units.ts';
import type { PlanFigure } from '../../src/plan/check.ts';
import type { Held } from '../../src/plan/held.ts';

/** Every figure of the plan, its limits, and the source of formula and limits. */
export function CheckPanel({
  figures,
  shown,
  held,
}: {
  figures: readonly PlanFigure[];
  shown: Shown;
  held: Held | undefined;
}) {
  const warnings = figures.filter(({ warns }) => warns).length;
  return (
    <section class="card plan-check" aria-labelledby="check-title">
      <h2 id="check-title">Plan check</h2>
      <p class="guidance">{GUIDANCE_ONLY}</p>
      <p role="status">{counted(warnings)}</p>
      <p class="hint">{heldText(held)}</p>
      <ul class="plan-figures">
        {figures.map((figure, i) => (
          // Two ends give two figures of one kind, always in the same order.
          <Figure key={`${figure.id}-${i}`} figure={figure} shown={shown} />
        ))}
      </ul>
    </section>
  );
}

const counted = (warnings: number): string => {
  if (warnings === 0) return NO_WARNINGS;
  const are = warnings === 1 ? 'One figure is' : `${warnings} figures are`;
  return `${are} outside the limits. You can still go on, but check the warning before the ladder goes up.`;
};

function Figure({ figure, shown }: { figure: PlanFigure; shown: Shown }) {
  const { name, warning } = planFigureWords(figure);
  const { formula, source } = planFigureOrigin(figure, shown);
  const limits = limitsText(figure, shown);
  return (
    <li class={figure.warns ? 'plan-figure warns' : 'plan-figure'}>
      <h3>{name}</h3>
      <p class="plan-value">{figureText(figure, shown)}</p>
      {figure.warns && (
        <p class="plan-warning">
          <WarningShape /> {warning}
        </p>
      )}
      {limits && <p class="plan-limits">{limits}</p>}
      <p class="hint">
        <code>{formula}</code>
        <br />
        {source}
      </p>
    </li>
  );
}

const WarningShape = () => (
  <svg class="warning-shape" viewBox="0 0 40 40" aria-hidden="true">
    <path d="M20 3 39 36H1zM18 15v11h4V15zM18 29v4h4v-4z" fill-rule="evenodd" />
  </svg>
);

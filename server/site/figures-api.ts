import { Hono } from 'hono';
import { FIGURES_NEED_ACCOUNTS, FIGURES_NEED_DATABASE } from '../../src/phrases/figures-page.ts';
import { TOO_MUCH_TO_READ } from '../../src/phrases/limits.ts';
import { ROUTES } from '../../src/protocol/routes.ts';
import { blockOf } from '../guard/guesses.ts';
import type { HeavyWork } from '../guard/turns.ts';
import type { Entrance } from '../http/entrance.ts';
import { addressOf, type Env, refuse } from '../http/http.ts';
import { answer } from '../http/route.ts';
import type { Clock } from '../process/clock.ts';
import type { FigureStore } from '../store/figures.ts';

interface FiguresDeps {
  readonly entrance: Entrance;
  /** Undefined where the records are in a file. */
  readonly figures: FigureStore | undefined;
  readonly heavy: HeavyWork;
  readonly clock: Clock;
}

/** The figures over all sites, for supervisors. */
export function figuresApi({ entrance, figures, heavy, clock }: FiguresDeps): Hono<Env> {
  const app = new Hono<Env>();
  answer(app, ROUTES.figures, async (c) => {
    // Without accounts nobody is known to be a supervisor, and each site is for who has its link.
    if (entrance.kind !== 'accounts') return refuse(c, 'not-now', FIGURES_NEED_ACCOUNTS);
    const locked = entrance.refusal(c, 'figures');
    if (locked) return locked;
    if (!figures) return refuse(c, 'not-now', FIGURES_NEED_DATABASE);
    const asker = { key: entrance.visitor(c)?.account.id ?? '', place: blockOf(addressOf(c)) };
    const counting = heavy.boards.take(asker, async () => c.json(await figures.over(clock.now())));
    return counting ?? refuse(c, 'too-fast', TOO_MUCH_TO_READ);
  });
  return app;
}

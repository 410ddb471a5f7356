import { provingBlock } from '../../src/report/proving.ts';
import type { Progress } from '../../src/visit/progress.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { BlockTable } from '../report/table.tsx';

/** Every attempt at a proving test with its times, as in the report. */
export function Tests({ visit, progress }: { visit: Visit; progress: Progress }) {
  const block = provingBlock(visit.commission, progress);
  return (
    <section class="visit-tests" aria-labelledby="tests-title">
      <h2 id="tests-title">{block.title}</h2>
      <div class="visit-table">
        <BlockTable block={block} />
      </div>
    </section>
  );
}

import { provingBlock } from '../../src/report/proving.ts';
import type { Progress } from '../../src/visit/progress.ts';
import type { Visit } from '../../src/visit/visit.ts';

/** Every attempt at a proving test with its times, as in the report. */
export function Tests({ visit, progress }: { visit: Visit; progress: Progress }) {
  const block = provingBlock(visit.commission, progress);
  if (block.kind !== 'table') return null;
  const { title, columns, rows } = block;
  return (
    <section class="visit-tests" aria-labelledby="tests-title">
      <h2 id="tests-title">{title}</h2>
      <div class="visit-table">
        <table>
          <thead>
            <tr>
              {columns.map(({ name }) => (
                <th key={name}>{name}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((cells) => (
              <tr key={cells.join()}>
                {columns.map(({ name }, i) => (
                  <td key={name} data-name={name}>
                    {cells[i]}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

import type { Captioned } from '../../src/charts/turns-scene.ts';
import type { Signature } from '../../src/model/facts.ts';
import type { Block } from '../../src/report/report.ts';
import { Drawing, Keys } from '../charts/scene.tsx';

/** One block of a sheet. */
export function BlockView({ block }: { block: Block }) {
  switch (block.kind) {
    case 'figures':
      return (
        <dl class="sheet-figures">
          {block.items.map(({ name, value, note }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>
                <strong>{value}</strong>
                <span>{note}</span>
              </dd>
            </div>
          ))}
        </dl>
      );
    case 'facts':
      return (
        <section>
          <h2>{block.title}</h2>
          <dl class="sheet-facts">
            {block.rows.map(({ name, value }) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd class={HASH.test(value) ? 'sheet-hash' : ''}>{value}</dd>
              </div>
            ))}
          </dl>
        </section>
      );
    case 'table':
      return (
        <section>
          <h2>{block.title}</h2>
          {block.rows.length === 0 ? <p>{block.empty}</p> : <Table block={block} />}
        </section>
      );
    case 'list':
      return (
        <section>
          <h2>{block.title}</h2>
          {block.items.length === 0 ? (
            <p>{block.empty}</p>
          ) : (
            <dl class="sheet-facts">
              {block.items.map(({ lead, text }) => (
                <div key={text}>
                  <dt>{lead}</dt>
                  <dd>{text}</dd>
                </div>
              ))}
            </dl>
          )}
        </section>
      );
    case 'signature':
      return (
        <section class="sheet-signature">
          <div>
            <h2>{block.title}</h2>
            {block.lines.map((line) => (
              <p key={line}>{line}</p>
            ))}
          </div>
          {block.signature && <Signed signature={block.signature} />}
        </section>
      );
    case 'charts':
      return (
        <div class="sheet-charts">
          {block.charts.map((chart) => (
            <ChartView key={chart.title} chart={chart} />
          ))}
        </div>
      );
  }
}

const HASH = /^[0-9a-f]{64}$/;

function Table({ block: { columns, rows } }: { block: Extract<Block, { kind: 'table' }> }) {
  const shares = columns.reduce((sum, { share }) => sum + share, 0);
  return (
    <table>
      <colgroup>
        {columns.map(({ name, share }) => (
          <col key={name} style={{ width: `${(100 * share) / shares}%` }} />
        ))}
      </colgroup>
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
            {cells.map((cell, index) => (
              <td key={columns[index]?.name}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const Signed = ({ signature }: { signature: Signature }) =>
  signature.kind === 'typed' ? (
    <p class="sheet-typed">{signature.text}</p>
  ) : (
    <svg class="sheet-drawn" viewBox="0 0 1000 400" role="img" aria-label="Signature">
      {signature.strokes.map((stroke) => (
        <polyline
          key={stroke.join()}
          points={(stroke.length > 1 ? stroke : [...stroke, ...stroke]).join(' ')}
        />
      ))}
    </svg>
  );

const ChartView = ({ chart: { title, caption, scene } }: { chart: Captioned }) => (
  <figure class="chart">
    <figcaption>
      <h3>{title}</h3>
      {caption && <p>{caption}</p>}
    </figcaption>
    {scene && (
      <>
        <div class="drawing">
          <Drawing scene={scene} />
        </div>
        <Keys keys={scene.keys} />
      </>
    )}
  </figure>
);

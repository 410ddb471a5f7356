import { useContext } from 'preact/hooks';
import type { Captioned } from '../../src/charts/turns-scene.ts';
import type { Signature } from '../../src/model/facts.ts';
import { HEADINGS } from '../../src/phrases/headings.ts';
import type { Block, ReportPhoto } from '../../src/report/report.ts';
import { Drawing, Keys } from '../charts/scene.tsx';
import { Picture } from '../photos/picture.tsx';
import { InPart, Jump, Linked, spots } from './jump.tsx';
import { ReportKey } from './key.ts';
import { BlockTable, Table } from './table.tsx';

/** One block of a sheet. */
export function BlockView({ block }: { block: Block }) {
  switch (block.kind) {
    case 'figures':
      return <Figures items={block.items} />;
    case 'facts':
      return (
        <section>
          <Heading title={block.title} />
          <dl class="sheet-facts">
            {block.rows.map(({ name, value }) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd class={HASH.test(value) ? 'sheet-hash' : ''}>
                  <Linked text={value} />
                </dd>
              </div>
            ))}
          </dl>
        </section>
      );
    case 'table':
      return (
        <section>
          <Heading title={block.title} />
          {block.rows.length === 0 ? <p>{block.empty}</p> : <BlockTable block={block} />}
        </section>
      );
    case 'list':
      return (
        <section>
          <Heading title={block.title} />
          {block.items.length === 0 ? (
            <p>{block.empty}</p>
          ) : (
            <dl class="sheet-facts">
              {block.items.map(({ lead, text }) => (
                <div key={text}>
                  <dt>{lead}</dt>
                  <dd>
                    <Linked text={text} />
                  </dd>
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
            <Heading title={block.title} />
            {block.lines.map((line) => (
              <p key={line}>
                <Linked text={line} />
              </p>
            ))}
          </div>
          {block.signature && <Signed signature={block.signature} />}
        </section>
      );
    case 'entries':
      return (
        <section>
          <Heading title={block.title} />
          <Entries block={block} />
        </section>
      );
    case 'photos':
      return (
        <section>
          <Heading title={block.title} />
          <div class="sheet-photos">
            {block.photos.map((photo) => (
              <ReportedPhoto key={photo.photo} photo={photo} />
            ))}
          </div>
          {block.gone.map((text) => (
            <p key={text}>
              <Linked text={text} />
            </p>
          ))}
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

function Figures({ items }: Pick<Extract<Block, { kind: 'figures' }>, 'items'>) {
  const { id } = useContext(InPart);
  return (
    <dl class="sheet-figures" id={spots.block(id, HEADINGS.summary)} tabIndex={-1}>
      {items.map(({ name, value, note }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <strong>{value}</strong>
            <span>
              <Linked text={note} />
            </span>
          </dd>
        </div>
      ))}
    </dl>
  );
}

function Heading({ title }: { title: string }) {
  const { id } = useContext(InPart);
  return (
    <h2 id={spots.block(id, title)} tabIndex={-1}>
      {title}
    </h2>
  );
}

/** Each entry, and the way back to where it is named. */
function Entries({ block: { columns, rows } }: { block: Extract<Block, { kind: 'entries' }> }) {
  const { id } = useContext(InPart);
  return (
    <Table
      columns={columns}
      rows={rows.map(({ seq, time, who, text, namedIn }) => ({
        id: spots.entry(id, seq),
        cells: [
          `#${seq}`,
          time,
          who,
          text,
          namedIn.map((title) => (
            <div key={title}>
              <Jump to={spots.block(id, title)}>{title}</Jump>
            </div>
          )),
        ],
      }))}
    />
  );
}

const HASH = /^[0-9a-f]{64}$/;

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

function ReportedPhoto({ photo: { job, photo, width, height, alt, caption } }: { photo: ReportPhoto }) {
  const { token, ofSite } = useContext(ReportKey);
  return (
    <figure>
      <Picture
        owner={{ token, ...(ofSite && { visit: job }) }}
        seq={photo}
        alt={alt}
        width={width}
        height={height}
      />
      <figcaption>
        <Linked text={caption} />
      </figcaption>
    </figure>
  );
}

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

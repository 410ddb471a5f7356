import { type Block, cellText, type Part, type TableBlock } from '../../src/report/report.ts';

/** Every word that each form of a part must show, block by block, in order. */
export const wordsOf = ({ title, subtitle, badge, blocks, foot }: Part): string[] => [
  title,
  subtitle,
  badge.text,
  ...blocks.flatMap(blockWords),
  foot,
];

function blockWords(block: Block): string[] {
  switch (block.kind) {
    case 'figures':
      return block.items.flatMap(({ name, value, note }) => [name, value, note]);
    case 'facts':
      return [block.title, ...block.rows.flatMap(({ name, value }) => [name, value])];
    case 'table':
      return [
        block.title,
        ...(block.rows.length === 0 ? [block.empty] : namesOf(block)),
        ...block.rows.flat().map(cellText),
      ];
    case 'list':
      return [
        block.title,
        ...(block.items.length === 0 ? [block.empty] : block.items.flatMap(({ lead, text }) => [lead, text])),
      ];
    case 'signature':
      return [
        block.title,
        ...block.lines,
        ...(block.signature?.kind === 'typed' ? [block.signature.text] : []),
      ];
    case 'entries':
      return [
        block.title,
        ...block.columns.map(({ name }) => name),
        ...block.rows.flatMap(({ seq, time, who, text, namedIn }) => [
          `#${seq}`,
          time,
          who,
          text,
          ...namedIn,
        ]),
      ];
    case 'photos':
      return [block.title, ...block.photos.map(({ caption }) => caption), ...block.gone];
    case 'charts':
      return block.charts.flatMap(({ title, caption, scene }) => [
        title,
        caption,
        ...(scene?.parts.flatMap((part) => (part.kind === 'text' ? [part.text] : [])) ?? []),
        ...(scene?.keys.map(({ text }) => text) ?? []),
      ]);
  }
}

/** Page numbers are for paper only. */
const namesOf = ({ columns, rows }: TableBlock): string[] =>
  columns.flatMap(({ name }, index) =>
    rows.some((row) => typeof row[index] === 'object' && 'pageOf' in row[index]) ? [] : [name],
  );

import type { ComponentChildren } from 'preact';
import type { Cell, Column, TableBlock } from '../../src/report/report.ts';
import { Jump, Linked, spots } from './jump.tsx';
import './table.css';

/** A table of the report, also on the page of a visit. Page numbers are for paper: here names lead to parts. */
export function BlockTable({ block }: { block: TableBlock }) {
  const { columns, rows } = block;
  const shown = columns.flatMap((column, index) => {
    const cells = rows.map((row) => row[index] ?? '');
    return cells.some((cell) => typeof cell === 'object' && 'pageOf' in cell) ? [] : [{ column, cells }];
  });
  return (
    <Table
      columns={shown.map(({ column }) => column)}
      rows={rows.map((_, at) => ({ cells: shown.map(({ cells }) => viewOf(cells[at] ?? '')) }))}
    />
  );
}

/** `id`: where links to a row lead. */
export interface Row {
  readonly id?: string;
  readonly cells: readonly ComponentChildren[];
}

export function Table({ columns, rows }: { columns: readonly Column[]; rows: readonly Row[] }) {
  const shares = columns.reduce((sum, { share }) => sum + share, 0);
  return (
    <table class="block-table">
      <colgroup>
        {columns.map(({ name, share }) => (
          <col key={name} style={{ width: `${(100 * share) / shares}%` }} />
        ))}
      </colgroup>
      <thead>
        <tr>
          {columns.map(({ name }) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ id, cells }, at) => (
          <tr key={at} id={id} tabIndex={id === undefined ? undefined : -1}>
            {cells.map((cell, index) => {
              const name = columns[index]?.name;
              return index === 0 ? (
                <th key={name} scope="row" data-name={name}>
                  {cell}
                </th>
              ) : (
                <td key={name} data-name={name}>
                  {cell === '' ? null : <span>{cell}</span>}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function viewOf(cell: Cell): ComponentChildren {
  if (cell === '') return '';
  if (typeof cell === 'string') return <Linked text={cell} />;
  return 'pageOf' in cell ? '' : <Jump to={spots.part(cell.part)}>{cell.text}</Jump>;
}

import { type Cell, csvText } from '../formats/csv.ts';
import { amendments } from '../log/amendments.ts';
import type { Entry } from '../model/entry.ts';
import type { Head, Seq } from '../model/ids.ts';
import { peopleOf } from '../model/people.ts';
import { COLUMNS } from './csv-columns.ts';

const BYTE_ORDER_MARK = '\uFEFF';

/**
 * The log as a table in the form of `csvText`, with a header line. Columns are `COLUMNS`. The last row has
 * the type "head": its `seq` is the number of entries, its `hash` the hash the chain ends at. The text begins
 * with a UTF-8 byte order mark, because common spreadsheets use another encoding without it.
 */
export function toCsv(entries: readonly Entry[], head: Head): string {
  const meter = entries[0]?.fact.type === 'opened' ? entries[0].fact.setup.meter : undefined;
  const context = {
    meter,
    takenBackBy: amendments(entries).takenBackBy,
    signedIn: signaturesOf(entries),
    people: peopleOf(entries),
  };
  const names = Object.keys(COLUMNS);
  const rows = entries.map((entry) => Object.values(COLUMNS).map(({ cell }) => cell(entry, context)));
  const closing: Record<string, Cell> = { seq: head.count, type: 'head', hash: head.hash };
  return BYTE_ORDER_MARK + csvText([names, ...rows, names.map((name) => closing[name])]);
}

/** What the columns of a CSV export hold, as CSV on the Web metadata (W3C Recommendation of 17 December 2015). */
export function csvMetadata(): object {
  return {
    '@context': 'http://www.w3.org/ns/csvw',
    url: 'export.csv',
    dialect: { header: true, delimiter: ',', quoteChar: '"', doubleQuote: true, encoding: 'utf-8' },
    tableSchema: {
      columns: Object.entries(COLUMNS).map(([name, { is, says }]) => ({
        name,
        titles: name,
        datatype: is,
        'dc:description': says,
      })),
    },
  };
}

function signaturesOf(entries: readonly Entry[]): (seq: Seq) => Seq | undefined {
  const signatures = entries.flatMap(({ seq, fact }) =>
    fact.type === 'signed' ? [{ seq, count: fact.head.count }] : [],
  );
  return (seq) => signatures.find(({ count }) => seq < count)?.seq;
}

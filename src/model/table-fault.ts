/** What is wrong with a table, and where. `line` is counted from 1; `value` is the cell's text. */
export interface CsvFault {
  readonly line: number;
  readonly column?: string;
  readonly value?: string;
  readonly fault:
    | 'empty'
    | 'not-csv'
    | 'unknown-column'
    | 'column-twice'
    | 'column-missing'
    | 'too-many-cells'
    | 'required'
    | 'bad-id'
    | 'id-twice'
    /** Equal to another id but for its case: of `choices`, where it is on another line, or on the site. */
    | 'id-case'
    | 'id-case-on-site'
    | 'hidden-character'
    | 'not-text'
    | 'not-xlsx'
    | 'too-big'
    | 'date-cell'
    | 'failed-formula'
    | 'too-many-rows'
    | 'inverted'
    | 'needs-its-threshold'
    | 'needs-path'
    | 'needs-its-profile'
    | 'bad-profile'
    | 'not-a-choice'
    | 'example-row'
    | 'too-long'
    | 'not-a-number'
    | 'out-of-range'
    | 'needs-its-unit'
    | 'unknown-unit'
    | 'unknown-profile';
  /** What would be right, if there is a list of it. */
  readonly choices?: readonly string[];
}

import type { ReactNode } from 'react';
import plain from './plain-table.module.css';
import classes from './record-table.module.css';

export interface Column<Row> {
  readonly title: string;
  /** Figures stand under one another by their ends. */
  readonly isNumber?: boolean;
  readonly cell: (row: Row) => ReactNode;
}

interface RecordTableProps<Row> {
  readonly caption?: string;
  /** What is told of each record; the first names it. */
  readonly columns: readonly [Column<Row>, ...Column<Row>[]];
  readonly rows: readonly Row[];
}

/**
 * Records as a table, and on a phone each under the other: nothing has to be scrolled sideways. The roles are named, since
 * a browser forgets them where a table is laid out otherwise.
 */
export function RecordTable<Row extends { readonly id: string }>(props: RecordTableProps<Row>) {
  const { caption, columns, rows } = props;
  const [first, ...others] = columns;
  const look = ({ isNumber }: Column<Row>) => (isNumber === true ? classes.number : undefined);
  return (
    <table role="table" className={`${plain.table} ${classes.table}`}>
      {caption !== undefined && <caption>{caption}</caption>}
      <thead role="rowgroup">
        <tr role="row">
          {columns.map((column) => (
            <th key={column.title} role="columnheader" scope="col" className={look(column)}>
              {column.title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody role="rowgroup">
        {rows.map((row) => (
          <tr key={row.id} role="row">
            <th role="rowheader" scope="row">
              {first.cell(row)}
            </th>
            {others.map((column) => (
              <td key={column.title} role="cell" className={look(column)}>
                <span aria-hidden="true" className={classes.name}>
                  {column.title}
                </span>
                <span>{column.cell(row)}</span>
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

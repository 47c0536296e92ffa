/** The rows by what is different for each. */
export const rowsBy = <Row>(rows: readonly Row[], key: (row: Row) => string): Map<string, Row> =>
  new Map(rows.map((row) => [key(row), row]));

export const byId = <Row extends { readonly id: string }>(rows: readonly Row[]): Map<string, Row> =>
  rowsBy(rows, ({ id }) => id);

/** The row that another refers to: foreign keys promise that it is there. */
export function known<Row>(rows: ReadonlyMap<string, Row>, id: string): Row {
  const row = rows.get(id);
  if (row === undefined) throw new Error(`${id} is referred to, and the team does not have it.`);
  return row;
}

/** The record without some of its fields. */
export const without = (record: object, fields: readonly string[]): Record<string, unknown> =>
  Object.fromEntries(Object.entries(record).filter(([name]) => !fields.includes(name)));

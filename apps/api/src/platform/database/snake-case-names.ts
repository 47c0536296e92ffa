import { DefaultNamingStrategy, type Table } from 'typeorm';

const snakeCase = (name: string) => name.replace(/([a-z0-9])([A-Z])/g, '$1_$2').toLowerCase();
const tableName = (table: Table | string) => (typeof table === 'string' ? table : table.name);

/** `teamId` in a class is `team_id` in SQL, and a constraint is named by its table and columns. */
export class SnakeCaseNames extends DefaultNamingStrategy {
  override columnName(propertyName: string, customName: string): string {
    return customName || snakeCase(propertyName);
  }

  override primaryKeyName(table: Table | string): string {
    return `${tableName(table)}_pk`;
  }

  override foreignKeyName(table: Table | string, columnNames: string[]): string {
    return `${tableName(table)}_${columnNames.filter((name) => name !== 'team_id').join('_') || 'team_id'}_fk`;
  }
}

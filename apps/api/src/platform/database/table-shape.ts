import type { DataSource, EntityMetadata } from 'typeorm';
import type { TeamOwned } from './team-owned.entity.js';

export interface ColumnShape {
  readonly property: string;
  /** As the database names it: `uuid`, `float8`, `timestamptz` … */
  readonly type: string;
  readonly isArray: boolean;
  readonly isNullable: boolean;
}

/** A reference within the team: by its id, and by what else must be the same. */
interface ReferenceShape {
  readonly column: string;
  readonly table: string;
  /** Columns here and there that must be equal. */
  readonly agreeing: readonly (readonly [here: string, there: string])[];
}

/** What a team's table is, as its entity says, without the team itself. */
export interface TableShape {
  readonly name: string;
  readonly columns: readonly ColumnShape[];
  readonly references: readonly ReferenceShape[];
  /** Columns that are unique together. */
  readonly uniques: readonly (readonly string[])[];
}

/** The shape of an entity's table. */
export function tableShape(dataSource: DataSource, entity: new () => TeamOwned): TableShape {
  const metadata = dataSource.getMetadata(entity);
  return {
    name: metadata.tableName,
    columns: metadata.columns
      .filter(({ propertyName }) => propertyName !== 'teamId')
      .map((column) => ({
        property: column.propertyName,
        type: String(column.type),
        isArray: column.isArray,
        isNullable: column.isNullable,
      })),
    references: referencesOf(metadata),
    uniques: metadata.indices
      .filter(({ isUnique }) => isUnique)
      .map(({ columns }) => columns.map(({ propertyName }) => propertyName))
      .map((columns) => columns.filter((column) => column !== 'teamId')),
  };
}

function referencesOf({ foreignKeys }: EntityMetadata): ReferenceShape[] {
  return foreignKeys.flatMap(({ columns, referencedColumns, referencedEntityMetadata }) => {
    const pairs = columns
      .map(({ propertyName }, i) => [propertyName, referencedColumns[i]?.propertyName ?? ''] as const)
      .filter(([here]) => here !== 'teamId');
    const key = pairs.find(([, there]) => there === 'id');
    if (!key || columns.length < 2) return [];
    const agreeing = pairs.filter((pair) => pair !== key);
    return [{ column: key[0], table: referencedEntityMetadata.tableName, agreeing }];
  });
}

type Ask = (statement: string) => Promise<unknown[]>;

/** Every row of every table, as the count and a digest of them in a fixed order. */
const ROWS = `select table_name, (xpath('/row/found/text()', query_to_xml(format(
    'select count(*) || '' '' || coalesce(md5(string_agg(one::text, chr(10) order by one::text)), '''') as found from %I as one',
    table_name), true, true, '')))[1]::text as found
  from information_schema.tables where table_schema = 'public' and table_type = 'BASE TABLE' order by 1`;

const SCHEMA = {
  columns: `select table_name, column_name, data_type, is_nullable, column_default
    from information_schema.columns where table_schema = 'public' order by 1, 2`,
  constraints: `select conrelid::regclass::text as of, conname, pg_get_constraintdef(oid) as definition
    from pg_constraint where connamespace = 'public'::regnamespace order by 1, 2`,
  indexes: `select indexname, indexdef from pg_indexes where schemaname = 'public' order by 1`,
  functions: `select oid::regprocedure::text as name, pg_get_functiondef(oid) as definition,
      (select string_agg(entry::text, ',' order by entry::text) from unnest(proacl) as entry) as rights
    from pg_proc where pronamespace = 'public'::regnamespace order by 1`,
  triggers: `select tgrelid::regclass::text as of, tgname, pg_get_triggerdef(oid) as definition
    from pg_trigger where not tgisinternal order by 1, 2`,
  rights: `select table_name, grantee, string_agg(privilege_type, ',' order by privilege_type) as rights
    from information_schema.role_table_grants where table_schema = 'public' group by 1, 2 order by 1, 2`,
  columnRights: `select table_name, column_name, grantee, privilege_type
    from information_schema.column_privileges where table_schema = 'public' order by 1, 2, 3, 4`,
  policies: `select tablename, policyname, roles::text, cmd, qual, with_check from pg_policies order by 1, 2`,
  lockedTables: `select relname, relrowsecurity, relforcerowsecurity from pg_class
    where relnamespace = 'public'::regnamespace and relkind = 'r' order by 1`,
};

/** The whole schema: tables, keys, functions, triggers, rights and row-level security. */
export async function schemaOf(ask: Ask): Promise<Record<string, unknown[]>> {
  const parts: Record<string, unknown[]> = {};
  for (const [part, statement] of Object.entries(SCHEMA)) parts[part] = await ask(statement);
  return parts;
}

/** All that a database holds, so that two of them can be compared: every row, and the schema around them. */
export async function contentsOf(ask: Ask): Promise<Record<string, unknown[]>> {
  return { rows: await ask(ROWS), ...(await schemaOf(ask)) };
}

import { Client, escapeIdentifier, escapeLiteral } from 'pg';
import { APP_ROLE } from '../../config/config.js';

/**
 * Makes sure that the role which serves requests exists, can sign in with the password in `appUrl`, and can
 * neither bypass row-level security nor own anything. Where the owner may not create roles, somebody else must
 * have made it before; then only its attributes are checked.
 * @throws Error when the role is missing and cannot be made, or has rights that would open the tenancy.
 */
export async function ensureAppRole(ownerUrl: string, appUrl: string): Promise<void> {
  const client = new Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    // Two processes may start at once: the second waits, then finds the role.
    await client.query('select pg_advisory_lock(hashtext($1))', [APP_ROLE]);
    const { rows } = await client.query<{ may_create: boolean; role_exists: boolean }>(
      `select rolcreaterole or rolsuper as may_create,
              exists (select from pg_roles where rolname = $1) as role_exists
       from pg_roles where rolname = current_user`,
      [APP_ROLE],
    );
    const { may_create: mayCreate, role_exists: roleExists } = rows[0] ?? {};
    if (!roleExists && !mayCreate) {
      throw new Error(`The role ${APP_ROLE} does not exist, and DATABASE_URL's user may not create it.`);
    }
    if (mayCreate) {
      const password = escapeLiteral(decodeURIComponent(new URL(appUrl).password));
      // A new role has no other right; to name those of an existing one, even to deny them, takes a superuser.
      await client.query(
        `${roleExists ? 'alter' : 'create'} role ${escapeIdentifier(APP_ROLE)} with login password ${password}`,
      );
    }
    await refuseTooMuchPower(
      async (statement, values) => (await client.query(statement, values)).rows,
      APP_ROLE,
    );
  } finally {
    await client.end();
  }
}

/** Something that statements are asked of, with the rows they answer. */
type Ask = (statement: string, values: unknown[]) => Promise<{ role: string; isMighty: boolean }[]>;

/**
 * Refuses to go on as a role that row-level security does not bind, or that could become one that it does not bind:
 * superusers, roles that may bypass it, and owners of tables.
 * @param role the role in question; without one, the one that asks.
 * @throws TooMuchPower
 */
export async function refuseTooMuchPower(ask: Ask, role?: string): Promise<void> {
  const [found] = await ask(
    `select own.rolname as role, exists (
       select from pg_roles mighty
       where pg_has_role(own.oid, mighty.oid, 'member') and (
         mighty.rolsuper or mighty.rolbypassrls or exists (
           select from pg_class
           where relowner = mighty.oid and relkind in ('r', 'p') and relnamespace = 'public'::regnamespace))
     ) as "isMighty"
     from pg_roles own where own.rolname = coalesce($1, current_user)`,
    [role ?? null],
  );
  if (found?.isMighty !== false) throw new TooMuchPower(found?.role ?? role ?? '');
}

/** Row-level security would hide nothing from this role. */
export class TooMuchPower extends Error {
  constructor(role: string) {
    super(
      `The role ${role} owns tables or may bypass row-level security: nothing is served as it. ` +
        `DATABASE_APP_URL must name a role that can do neither, as ${APP_ROLE}.`,
    );
  }
}

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
    await refuseTooMuchPower(client);
  } finally {
    await client.end();
  }
}

async function refuseTooMuchPower(client: Client): Promise<void> {
  const { rows } = await client.query<{ rolsuper: boolean; rolbypassrls: boolean }>(
    'select rolsuper, rolbypassrls from pg_roles where rolname = $1',
    [APP_ROLE],
  );
  if (rows[0]?.rolsuper || rows[0]?.rolbypassrls) {
    throw new Error(`The role ${APP_ROLE} may bypass row-level security; it must not.`);
  }
}

import { Client } from 'pg';
import { ownerAddress, type Config } from '../config/config.js';
import { DEMO_PASSWORD, DEMO_TEAM_NAME, INVITED, MECHANIC } from './people.js';

/** One process at a time looks and fills; the next finds what the first has done. */
const DEMO_LOCK = 4_750_002;

/**
 * Fills an empty database with the demo team, and returns the lines to print: its sign-ins, also when it was there
 * before; nothing for a database that others use.
 */
export async function ensureDemoTeam(config: Config): Promise<string> {
  const client = new Client({ connectionString: ownerAddress(config) });
  await client.connect();
  try {
    await client.query('select pg_advisory_lock($1)', [DEMO_LOCK]);
    const { isEmpty, hasDemo } = await look(client);
    if (!isEmpty && !hasDemo) return '';
    if (isEmpty) await fill(config);
    return signIns();
  } finally {
    await client.end();
  }
}

/** Whether nobody uses the database yet, and whether the demo team is in it. As the owner, who sees every team. */
async function look(client: Client): Promise<{ isEmpty: boolean; hasDemo: boolean }> {
  const { rows } = await client.query<{ is_empty: boolean; has_demo: boolean }>(
    `select not exists (select from account) as is_empty,
            exists (select from team
                    join member on member.team_id = team.id
                    join account on account.id = member.account_id
                    where team.name = $1 and account.email = $2) as has_demo`,
    [DEMO_TEAM_NAME, MECHANIC.email],
  );
  return { isEmpty: rows[0]?.is_empty ?? false, hasDemo: rows[0]?.has_demo ?? false };
}

async function fill(config: Config): Promise<void> {
  // Loaded only when it is needed: a start that finds the team there need not wait for the whole service.
  await import('reflect-metadata');
  const [{ NestFactory }, { AppModule }, { seedDemoTeam }] = await Promise.all([
    import('@nestjs/core'),
    import('../app.module.js'),
    import('./seed-demo-team.js'),
  ]);
  // Who may sign up is about strangers: the demo's mechanic is none.
  const app = await NestFactory.createApplicationContext(AppModule.with({ ...config, openSignUp: true }), {
    logger: ['fatal', 'error'],
    abortOnError: false,
  });
  try {
    await seedDemoTeam(app);
  } finally {
    await app.close();
  }
}

function signIns(): string {
  const people = [MECHANIC, ...INVITED];
  const column = (texts: readonly string[]) => Math.max(...texts.map(({ length }) => length));
  const nameWidth = column(people.map(({ displayName }) => displayName));
  const emailWidth = column(people.map(({ email }) => email));
  const lines = people.map(
    ({ displayName, email }) =>
      `  ${displayName.padEnd(nameWidth)}  ${email.padEnd(emailWidth)}  ${DEMO_PASSWORD}`,
  );
  return [`${DEMO_TEAM_NAME}. Sign in as`, ...lines, ''].join('\n');
}

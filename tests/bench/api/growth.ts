import pg from 'pg';
import type { House } from './house.js';
import { load } from './load.js';

const RUNS_OF_A_TEAM = 1_000;
/** A thousand teams with a thousand runs each are a million. BENCH_TEAMS makes it fewer for a quick look. */
const TEAMS = Number(process.env['BENCH_TEAMS'] ?? 1_000);
const TEAMS_AT_ONCE = 50;
const CONNECTIONS = 4;
const SECONDS = 10;
const WARM_UP_SECONDS = 2;

/** In the order in which they refer to each other. */
const TABLES = ['team', 'track', 'rider', 'spring_unit', 'bike', 'session', 'setup', 'run', 'ring_reading'];

/** The same reads of one team with a thousand runs, first alone in the database, then among a million runs of others. */
export async function measureGrowth(house: House): Promise<void> {
  const client = new pg.Client({ connectionString: house.databaseUrl });
  await client.connect();
  try {
    await fillTeam(client, house.demo.teamId);
    await client.query('analyze');
    const alone = await measureReads(house);
    await copyTeam(client, house.demo.teamId, TEAMS - 1);
    await client.query('analyze');
    const { rows } = await client.query<{ count: string }>('select count(*) from run');
    const among = await measureReads(house);
    console.log(
      `\nGrowth, p95 (ms)                 ${RUNS_OF_A_TEAM} runs   ${rows[0]?.count ?? ''} runs   ratio`,
    );
    for (const [name, before] of Object.entries(alone)) {
      const after = among[name] ?? NaN;
      console.log(
        `${name.padEnd(28)}${before.toFixed(1).padStart(14)}${after.toFixed(1).padStart(15)}${(after / before).toFixed(2).padStart(8)}`,
      );
    }
  } finally {
    await client.end();
  }
}

async function measureReads({ address, demo }: House): Promise<Record<string, number>> {
  const paths = {
    'baselines of a track': `/baselines?trackId=${demo.trackId}`,
    'newest runs of a track': `/runs?trackId=${demo.trackId}&limit=20`,
    'set-up card': `/setups?bikeId=${demo.bikeId}&limit=2`,
  };
  const figures: Record<string, number> = {};
  for (const [name, path] of Object.entries(paths)) {
    const next = () => ({
      method: 'GET' as const,
      path: `${demo.teamPath}${path}`,
      headers: { cookie: demo.cookie },
    });
    await load(address, next, { connections: CONNECTIONS, seconds: WARM_UP_SECONDS });
    figures[name] = (await load(address, next, { connections: CONNECTIONS, seconds: SECONDS })).p95;
  }
  return figures;
}

/** Rides the team's own runs again, with their readings, until there are enough. */
async function fillTeam(client: pg.Client, teamId: string): Promise<void> {
  const run = await columnsOf(client, 'run', ['team_id', 'id', 'order_in_session']);
  const reading = await columnsOf(client, 'ring_reading', ['team_id', 'id', 'run_id']);
  await client.query('begin');
  await client.query(
    `create temporary table more on commit drop as
     select run.id as old_id, gen_random_uuid() as id, 1000 + row_number() over () as place
     from run, generate_series(1, 1000)
     where run.team_id = $1
     limit greatest(0, $2 - (select count(*) from run where team_id = $1))`,
    [teamId, RUNS_OF_A_TEAM],
  );
  await client.query(
    `insert into run (team_id, id, order_in_session, ${run})
     select team_id, more.id, more.place, ${run} from run join more on more.old_id = run.id where team_id = $1`,
    [teamId],
  );
  await client.query(
    `insert into ring_reading (team_id, id, run_id, ${reading})
     select team_id, gen_random_uuid(), more.id, ${reading}
     from ring_reading join more on more.old_id = run_id where team_id = $1`,
    [teamId],
  );
  await client.query('commit');
}

/** Copies all of a team as other teams. Keys begin with the team, so the copies may keep all other ids. */
async function copyTeam(client: pg.Client, teamId: string, copies: number): Promise<void> {
  for (let done = 0; done < copies; done += TEAMS_AT_ONCE) {
    await client.query('begin');
    await client.query(
      'create temporary table copied on commit drop as select gen_random_uuid() as id from generate_series(1, $1)',
      [Math.min(TEAMS_AT_ONCE, copies - done)],
    );
    for (const table of TABLES) {
      const key = table === 'team' ? 'id' : 'team_id';
      const rest = await columnsOf(client, table, [key]);
      await client.query(
        `insert into ${table} (${key}, ${rest})
         select copied.id, ${rest
           .split(', ')
           .map((column) => `source.${column}`)
           .join(', ')}
         from ${table} source cross join copied where source.${key} = $1`,
        [teamId],
      );
    }
    await client.query('commit');
  }
}

/** The columns of a table but for those named, as a list for a statement. */
async function columnsOf(client: pg.Client, table: string, without: readonly string[]): Promise<string> {
  const { rows } = await client.query<{ name: string }>(
    `select quote_ident(column_name) as name from information_schema.columns
     where table_schema = 'public' and table_name = $1 and not column_name = any($2)`,
    [table, without],
  );
  return rows.map(({ name }) => name).join(', ');
}

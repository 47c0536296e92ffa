import { readConfig } from './config/config.js';
import { ensureDemoTeam } from './demo/ensure-demo-team.js';

/** Fills an empty database with the invented demo team and prints its sign-ins; DEMO_TEAM=false leaves it out. */
const config = readConfig(process.env);
if (config.demoTeam) process.stdout.write(await ensureDemoTeam(config));

/** Measures the service with the demo team on a durable Postgres, all of them and the load on this machine. */
import { measureGrowth } from './api/growth.js';
import { measureHotReads } from './api/hot-reads.js';
import { openHouse } from './api/house.js';
import { measureRaceDay } from './api/race-day.js';
import { measureWriters } from './api/writers.js';

const parts = { reads: measureHotReads, writers: measureWriters, day: measureRaceDay, growth: measureGrowth };
const chosen = process.argv.slice(2);
const unknown = chosen.filter((name) => !(name in parts));
if (unknown.length > 0)
  throw new Error(`No such part: ${unknown.join(', ')}. Parts: ${Object.keys(parts).join(', ')}.`);

const house = await openHouse();
try {
  for (const [name, measure] of Object.entries(parts)) {
    if (chosen.length === 0 || chosen.includes(name)) await measure(house);
  }
} finally {
  await house.stop();
}

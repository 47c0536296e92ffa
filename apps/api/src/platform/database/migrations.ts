import { Tables1764000000000 } from './migrations/1764000000000-tables.js';
import { Tenancy1764000001000 } from './migrations/1764000001000-tenancy.js';

/** In the order in which they run. */
export const MIGRATIONS = [Tables1764000000000, Tenancy1764000001000];

import { Tables1764000000000 } from './migrations/1764000000000-tables.js';
import { Tenancy1764000001000 } from './migrations/1764000001000-tenancy.js';
import { TestPlans1764100000000 } from './migrations/1764100000000-test-plans.js';

/** In the order in which they run. */
export const MIGRATIONS = [Tables1764000000000, Tenancy1764000001000, TestPlans1764100000000];

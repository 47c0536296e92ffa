import type { DemoDay } from './scenario.js';
import { SPRING_DAYS } from './spring-days.js';
import { SUMMER_DAYS } from './summer-days.js';

/** The invented season, day after day. Its dates are part of the invention. */
export const SEASON: readonly DemoDay[] = [...SPRING_DAYS, ...SUMMER_DAYS];

/** Decides every run of the season: another seed is another season of the same team. */
export const SEASON_SEED = 20_260_411;

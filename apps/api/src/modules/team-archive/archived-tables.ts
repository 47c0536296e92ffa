import type { Archived } from '../../platform/archive/archived.js';
import { BASELINE_ARCHIVE, BASELINE_RUNS_ARCHIVE } from '../baselines/baseline.archive.js';
import { BIKE_ARCHIVE } from '../bikes/bike.archive.js';
import { DECISION_ARCHIVE } from '../decisions/decision.archive.js';
import { PLANNED_SESSION_ARCHIVE } from '../planned-sessions/planned-session.archive.js';
import { RIDER_ARCHIVE } from '../riders/rider.archive.js';
import { RING_READING_ARCHIVE } from '../runs/ring-reading.archive.js';
import { RUN_ARCHIVE } from '../runs/run.archive.js';
import { SESSION_ARCHIVE } from '../sessions/session.archive.js';
import { SETUP_ARCHIVE } from '../setups/setup.archive.js';
import { SPACER_MOVEMENT_ARCHIVE } from '../spacers/spacer-movement.archive.js';
import { SPRING_UNIT_ARCHIVE } from '../spring-units/spring-unit.archive.js';
import {
  PLANNED_RUN_ARCHIVE,
  TEST_PLAN_ARCHIVE,
  TEST_PLAN_ARM_ARCHIVE,
} from '../test-plans/test-plan.archive.js';
import { TRACK_ARCHIVE } from '../tracks/track.archive.js';
import { SERVICE_ENTRY_ARCHIVE, UNIT_CARE_ARCHIVE } from '../unit-service/unit-service.archive.js';
import { WORK_ORDER_ARCHIVE, WORK_STEP_ARCHIVE } from '../work-orders/work-order.archive.js';

/** What an archive holds of a team, one line a table, in any order: references tell which comes first. */
export const ARCHIVED_TABLES: readonly Archived[] = [
  BASELINE_ARCHIVE,
  BASELINE_RUNS_ARCHIVE,
  BIKE_ARCHIVE,
  DECISION_ARCHIVE,
  PLANNED_RUN_ARCHIVE,
  PLANNED_SESSION_ARCHIVE,
  RIDER_ARCHIVE,
  RING_READING_ARCHIVE,
  RUN_ARCHIVE,
  SERVICE_ENTRY_ARCHIVE,
  SESSION_ARCHIVE,
  SETUP_ARCHIVE,
  SPACER_MOVEMENT_ARCHIVE,
  SPRING_UNIT_ARCHIVE,
  TEST_PLAN_ARCHIVE,
  TEST_PLAN_ARM_ARCHIVE,
  TRACK_ARCHIVE,
  UNIT_CARE_ARCHIVE,
  WORK_ORDER_ARCHIVE,
  WORK_STEP_ARCHIVE,
];

/** What it does not hold, and why. A test holds both lists against the database's own list of tables. */
export const LEFT_OUT: Readonly<Record<string, string>> = {
  account: 'Whoever can sign in here belongs to no team; people of the team are under `people`.',
  api_token: 'A secret: whoever has the token acts for its maker.',
  audit_entry: 'What this database saw. Taken in elsewhere, it would vouch for what nobody there saw.',
  demand_fit: 'Computed from the readings, and anew where they arrive.',
  former_member: 'People of the team are under `people`.',
  idempotency: 'Answers to requests that were made here.',
  invitation: 'A secret: whoever has the link joins.',
  member: 'People of the team are under `people`; they join again by invitation.',
  sign_in: 'A secret: whoever has it is signed in.',
  sign_in_link: 'A secret: whoever has the link signs in.',
  sign_in_try: 'What strangers tried here.',
  team: 'Its name and its evidence version are under `team`.',
};

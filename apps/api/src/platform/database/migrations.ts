import { Tables1764000000000 } from './migrations/1764000000000-tables.js';
import { Tenancy1764000001000 } from './migrations/1764000001000-tenancy.js';
import { TestPlans1764100000000 } from './migrations/1764100000000-test-plans.js';
import { BaselineVenue1764200000000 } from './migrations/1764200000000-baseline-venue.js';
import { DecisionEvidence1764300000000 } from './migrations/1764300000000-decision-evidence.js';
import { SectionTimes1764300001000 } from './migrations/1764300001000-section-times.js';
import { SignIns1764600000000 } from './migrations/1764600000000-sign-ins.js';
import { TokensAndAudit1764600001000 } from './migrations/1764600001000-tokens-and-audit.js';
import { LiveEvents1764700000000 } from './migrations/1764700000000-live-events.js';
import { SignInLinks1764750000000 } from './migrations/1764750000000-sign-in-links.js';
import { AccountUnits1764800000000 } from './migrations/1764800000000-account-units.js';
import { FormerMembers1764800500000 } from './migrations/1764800500000-former-members.js';
import { UnitService1764810000000 } from './migrations/1764810000000-unit-service.js';
import { SetBackClocks1764820000000 } from './migrations/1764820000000-set-back-clocks.js';
import { Passwords1764821000000 } from './migrations/1764821000000-passwords.js';
import { PlannedSessions1764830000000 } from './migrations/1764830000000-planned-sessions.js';
import { SpacerStock1764840000000 } from './migrations/1764840000000-spacer-stock.js';
import { TrackGates1764850000000 } from './migrations/1764850000000-track-gates.js';
import { WorkOrders1764860000000 } from './migrations/1764860000000-work-orders.js';
import { MakersOfLinks1764870000000 } from './migrations/1764870000000-makers-of-links.js';
import { ProvenPasswords1764880000000 } from './migrations/1764880000000-proven-passwords.js';

/** In the order in which they run. */
export const MIGRATIONS = [
  Tables1764000000000,
  Tenancy1764000001000,
  TestPlans1764100000000,
  BaselineVenue1764200000000,
  DecisionEvidence1764300000000,
  SectionTimes1764300001000,
  SignIns1764600000000,
  TokensAndAudit1764600001000,
  LiveEvents1764700000000,
  SignInLinks1764750000000,
  AccountUnits1764800000000,
  FormerMembers1764800500000,
  UnitService1764810000000,
  SetBackClocks1764820000000,
  Passwords1764821000000,
  PlannedSessions1764830000000,
  SpacerStock1764840000000,
  TrackGates1764850000000,
  WorkOrders1764860000000,
  MakersOfLinks1764870000000,
  ProvenPasswords1764880000000,
];

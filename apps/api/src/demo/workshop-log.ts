import type { SpacerMovementInputDto } from '../modules/spacers/spacers.dto.js';
import type { UnitKey } from './units.js';

/** What the workshop has written down of a unit. */
export interface UnitLog {
  /** From its invented manual; nobody has looked up the rest. */
  readonly serviceIntervalHours?: number;
  readonly capTorqueNm?: number;
  /** Days of its services. */
  readonly services: readonly { readonly day: string; readonly note: string }[];
  /** Riding that no run tells of: ways up, training at home. */
  readonly riding: readonly { readonly day: string; readonly ridingHours: number }[];
}

const FRESH = { services: [{ day: '2026-04-02', note: 'New seals and oil before the season.' }] };
const home = (...ridingHours: readonly number[]) =>
  ridingHours.map((hours, month) => ({ day: `2026-0${month + 5}-28`, ridingHours: hours }));

/** One service is overdue, one is near, one unit has no interval, and some have no record at all. */
export const WORKSHOP_LOG: Partial<Record<UnitKey, UnitLog>> = {
  ashTrailFork: { ...FRESH, serviceIntervalHours: 50, capTorqueNm: 28, riding: home(14, 18) },
  ashTrailShock: { ...FRESH, serviceIntervalHours: 100, riding: home(14, 18) },
  ashEnduroFork: { ...FRESH, serviceIntervalHours: 50, capTorqueNm: 30, riding: home(22, 25, 9) },
  ashEnduroShock: { ...FRESH, serviceIntervalHours: 100, riding: home(22, 25, 9) },
  brambleEnduroFork: {
    serviceIntervalHours: 50,
    services: [...FRESH.services, { day: '2026-07-06', note: 'A leaking seal, both sides.' }],
    riding: home(19, 16, 6),
  },
  brambleDownhillFork: { ...FRESH, serviceIntervalHours: 40, capTorqueNm: 25, riding: home(15, 21) },
  cloverFork: { ...FRESH, riding: home(8) },
};

/** What lay in the box at the end of the season: spacers by unit kind and volume, mL. */
export const COUNTED: readonly SpacerMovementInputDto[] = (
  [
    ['fork', 7.5, 5],
    ['fork', 9.5, 6],
    ['fork', 10.5, 4],
    ['fork', 12, 6],
    ['fork', 9, 4],
    ['fork', 11.5, 5],
    ['fork', 8.5, 4],
    ['shock', 5.5, 4],
    ['shock', 6.5, 5],
    ['shock', 7.5, 3],
    ['shock', 8, 4],
    ['shock', 6, 4],
  ] as const
).map(([unitKind, spacerVolumeMl, spacers]) => ({ unitKind, spacerVolumeMl, spacers, reason: 'counted' }));

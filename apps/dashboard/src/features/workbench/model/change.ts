import { rounded } from '../../../shared/format/units.js';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { ApiProblem } from '../../../shared/http/problem.js';
import type { EndSetup, Setup } from '../../../shared/http/reads/setups.js';
import type { BikeEnds } from '../api/bike-ends.js';
import type { Change } from '../api/propose-change.js';
import { texts } from '../texts.js';
import type { OpenedBench, Proposed } from './bench.js';
import { isSameFill, type Fill, type FillField } from './fill.js';

const CONFLICT = 409;

/** Whether the API refused because somebody has changed the bike since the proposal began. */
export const isStale = (error: unknown): error is ApiProblem =>
  error instanceof ApiProblem && error.status === CONFLICT && error.code === 'change.stale';

interface ChangeParts {
  readonly ends: BikeEnds;
  /** The set-up that the figures of now come from; its clicks stay as they are. */
  readonly setup: Setup | undefined;
  readonly fork: Fill;
  readonly shock: Fill | null;
  readonly reason: string;
  readonly note: string;
}

/** The proposal as the API takes it: both ends, as a gauge shows them in the track's air. */
export function changeMessage({ ends, setup, fork, shock, reason, note }: ChangeParts): Change {
  return {
    bikeId: ends.bikeId,
    setupId: ends.setupId,
    trackId: ends.trackId,
    fork: endMessage(fork, setup?.fork),
    shock: shock === null ? null : endMessage(shock, setup?.shock),
    reason,
    note,
  };
}

/** Pressures are sent as the gauge that the person reads shows them. */
const endMessage = ({ pressurePsi, spacers }: Fill, before: EndSetup | null | undefined) => ({
  pressurePsi: rounded('psi', pressurePsi, 'decimals'),
  spacers,
  reboundClicks: before?.reboundClicks ?? null,
  compressionClicks: before?.compressionClicks ?? null,
});

interface ProposedEnd {
  readonly opened: OpenedBench | null;
  readonly proposed: Proposed | null;
}

/** Why nothing can be saved yet, in words; null where it can. */
export function hindranceOf(ends: readonly ProposedEnd[]): string | null {
  const present = ends.filter(({ opened }) => opened !== null);
  if (present.some(({ opened }) => opened?.status !== 'ready')) return texts.endMissing;
  if (present.some(({ proposed }) => proposed?.view == null)) return texts.somethingImpossible;
  const isChanged = present.some(
    ({ opened, proposed }) =>
      opened?.status === 'ready' &&
      proposed?.view != null &&
      !isSameFill(opened.now.fill, proposed.view.fill),
  );
  return isChanged ? null : texts.nothingProposed;
}

const FIELDS = ['pressurePsi', 'spacers'] as const;

/** What the API has refused of one end, by field. */
export function endRefusals(
  error: unknown,
  end: 'fork' | 'shock',
): Readonly<Partial<Record<FillField, string>>> {
  const errors = fieldErrors(error);
  return Object.fromEntries(
    FIELDS.flatMap((field) => {
      const message = errors[`${end}.${field}`];
      return message === undefined ? [] : [[field, message]];
    }),
  );
}

/** Refused fields that are not in sight, each in a line. */
export function refusalsElsewhere(error: unknown, shown: 'fork' | 'shock'): string[] {
  const inSight = [...FIELDS.map((field) => `${shown}.${field}`), 'reason', 'note'];
  return Object.entries(fieldErrors(error))
    .filter(([field]) => !inSight.includes(field))
    .map(([field, message]) => `${field}: ${message}`);
}

import type { components } from '../../../shared/http/generated/schema.js';
import type { RefusedField } from '../../../shared/http/problem.js';

export type RunInput = components['schemas']['RunInputDto'];

/** Why the API did not take a run. */
export interface Refusal {
  readonly status: number;
  readonly title: string;
  readonly detail: string;
  readonly fields: readonly RefusedField[];
}

/** A run on this device that the API has not acknowledged yet. */
export interface QueuedRun {
  /** The idempotency key: however often the run is sent, the API stores it once. */
  readonly key: string;
  /** The account that logged it: nobody else sends it or sees it. */
  readonly account: string;
  readonly teamId: string;
  /** When it was logged: ISO 8601. Runs are sent in this order. */
  readonly loggedAt: string;
  /** Exactly what is sent, each time. */
  readonly message: RunInput;
  /** The place in a test plan that it was ridden for; absent for a run of no plan. */
  readonly plan?: { readonly id: string; readonly position: number } | undefined;
  /** What the rider reads here while the lists may be out of reach. */
  readonly names: { readonly bike: string; readonly track: string };
  /** Set once the API has said no. The run stays until the rider corrects or discards it. */
  readonly refusal: Refusal | null;
}

export const inOrder = (runs: readonly QueuedRun[]): QueuedRun[] =>
  runs.toSorted((a, b) => (a.loggedAt < b.loggedAt ? -1 : a.loggedAt > b.loggedAt ? 1 : 0));

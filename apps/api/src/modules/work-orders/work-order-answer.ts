import type { UnitSetting } from '@loamledger/spring';
import { gaugePascal, psiFromGaugePascal } from '@loamledger/units';
import { setupAnswer } from '../setups/setup-figures.js';
import { fillOf, unitIdAt } from '../setups/setup-fill.js';
import type { Setup } from '../setups/setups.service.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import { ENDS, type End } from '../suspension/end-inputs.js';
import type { WorkOrderEntity } from './work-order.entity.js';
import type { WorkOrderDto, WorkPartsDto, WorkStepDto } from './work-orders.dto.js';
import type { WorkStepEntity } from './work-step.entity.js';

/** What is read beside an order to tell of it. */
export interface OrderContext {
  readonly from: Setup | null;
  readonly to: Setup;
  readonly steps: readonly WorkStepEntity[];
  /** Whether the bike has no newer set-up. */
  readonly isNewest: boolean;
  readonly unit: (id: string) => SpringUnit | undefined;
  readonly inStock: (unit: SpringUnit) => number;
  readonly capTorque: (unitId: string) => number | null;
  readonly nameOf: (accountId: string) => string;
}

/** What a set-up fills and sets an end to. */
export const settingAt = (end: End, setup: Setup): UnitSetting => ({
  ...fillOf(end, setup),
  rebound: end === 'fork' ? setup.forkRebound : setup.shockRebound,
  compression: end === 'fork' ? setup.forkCompression : setup.shockCompression,
});

/** What was in the unit of `to`; null where another was mounted, or nothing is known. */
export const settingBefore = (end: End, from: Setup | null, to: Setup): UnitSetting | null =>
  from && unitIdAt(end, from) === unitIdAt(end, to) ? settingAt(end, from) : null;

/** How many spacers go into the unit of `to`, all of them where nothing is known of it; negative: come out. */
export const spacersMoved = (end: End, from: Setup | null, to: Setup): number =>
  settingAt(end, to).spacers - (settingBefore(end, from, to)?.spacers ?? 0);

/** A work order as a message. */
export function workOrderAnswer(order: WorkOrderEntity, context: OrderContext): WorkOrderDto {
  const { from, to, steps, isNewest, nameOf } = context;
  const isDone = steps.every(({ doneAt }) => doneAt !== null);
  return {
    id: order.id,
    bikeId: order.bikeId,
    madeAt: order.createdAt.toISOString(),
    madeByName: nameOf(order.madeBy),
    state: isDone ? 'done' : isNewest ? 'open' : 'replaced',
    from: from && setupAnswer(from),
    to: setupAnswer(to),
    parts: ENDS.flatMap((end) => partsAt(end, context)),
    steps: steps.map((step) => stepAnswer(step, context)),
  };
}

function partsAt(end: End, { from, to, steps, unit, inStock }: OrderContext): WorkPartsDto[] {
  const unitId = unitIdAt(end, to);
  const found = unitId === null ? undefined : unit(unitId);
  if (!found || !steps.some((step) => step.end === end)) return [];
  const isToMove = steps.some(
    ({ end: at, step, doneAt }) => at === end && step === 'move-spacers' && doneAt === null,
  );
  const more = isToMove ? spacersMoved(end, from, to) : 0;
  return [
    {
      end,
      unitId: found.id,
      unitName: found.name,
      spacersNeeded: Math.max(0, more),
      spacersInStock: inStock(found),
    },
  ];
}

function stepAnswer(step: WorkStepEntity, { from, to, capTorque, nameOf }: OrderContext): WorkStepDto {
  const after = settingAt(step.end, to);
  const before = settingBefore(step.end, from, to);
  const isMoved = step.step === 'move-spacers';
  const click = CLICKS[step.step];
  return {
    id: step.id,
    end: step.end,
    step: step.step,
    pressurePsi: step.step === 'pump' ? psiFromGaugePascal(gaugePascal(after.pressure)) : null,
    spacersChange: isMoved ? spacersMoved(step.end, from, to) : null,
    spacersThen: isMoved ? after.spacers : null,
    clicksFrom: click ? (before?.[click] ?? null) : null,
    clicksTo: click ? after[click] : null,
    capTorqueNm: step.step === 'close-cap' ? capTorque(unitIdAt(step.end, to) ?? '') : null,
    doneAt: step.doneAt?.toISOString() ?? null,
    doneByName: step.doneBy && nameOf(step.doneBy),
  };
}

const CLICKS: Partial<Record<WorkStepEntity['step'], 'rebound' | 'compression'>> = {
  'set-rebound': 'rebound',
  'set-compression': 'compression',
};

import { InvalidField } from '../../platform/errors/refusal.js';
import type { Setup } from '../setups/setups.service.js';
import type { TestPlanInputDto } from './test-plan-input.dto.js';

const FEWEST_ARMS = 2;

/** Refuses riders and arms that make no plan, as far as can be told without the stored records. @throws InvalidField */
export function refuseOddArms({ riders, arms }: TestPlanInputDto): void {
  if (riders.length === 0) throw new InvalidField('test-plan.no-rider', 'riders', [], 'at least one rider');
  refuseRepeated(
    'riders',
    'riderId',
    riders.map(({ riderId }) => riderId),
  );
  if (arms.length < FEWEST_ARMS) {
    throw new InvalidField('test-plan.one-arm', 'arms', arms.length, 'at least two arms');
  }
  refuseRepeated(
    'arms',
    'name',
    arms.map(({ name }) => name),
  );
  const bikes = new Set(riders.map(({ bikeId }) => bikeId));
  for (const [i, { setups }] of arms.entries()) {
    const named = setups.map(({ bikeId }) => bikeId);
    if (
      named.length !== bikes.size ||
      named.some((id) => !bikes.has(id)) ||
      new Set(named).size !== bikes.size
    ) {
      throw new InvalidField(
        'test-plan.setups-do-not-match-bikes',
        `arms.${i}.setups`,
        named.length,
        `exactly one set-up of each of the ${bikes.size} bikes that are ridden`,
      );
    }
  }
}

/** Refuses set-ups of other bikes, and arms that are one and the same on a bike. @throws InvalidField */
export function refuseOddSetups({ arms }: TestPlanInputDto, stored: ReadonlyMap<string, Setup>): void {
  const seen = new Set<string>();
  for (const [i, arm] of arms.entries()) {
    for (const [j, { bikeId, setupId }] of arm.setups.entries()) {
      const field = `arms.${i}.setups.${j}.setupId`;
      if (stored.get(setupId)?.bikeId !== bikeId) {
        throw new InvalidField('test-plan.setup-of-other-bike', field, setupId, 'a set-up of this bike');
      }
      if (seen.has(setupId)) {
        throw new InvalidField(
          'test-plan.same-setup-twice',
          field,
          setupId,
          'another set-up than in other arms',
        );
      }
      seen.add(setupId);
    }
  }
}

function refuseRepeated(list: string, field: string, values: readonly string[]): void {
  const again = values.findIndex((value, i) => values.indexOf(value) < i);
  if (again === -1) return;
  throw new InvalidField(
    'test-plan.repeated',
    `${list}.${again}.${field}`,
    values[again],
    'different from the others',
  );
}

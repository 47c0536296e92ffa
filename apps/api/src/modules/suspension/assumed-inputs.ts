import type { Bike } from '../bikes/bikes.service.js';
import type { Rider } from '../riders/riders.service.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import { PARAMETER_FIELDS, PARAMETER_NAMES } from '../spring-units/unit-parameters.js';
import { ASSUMED_FRONT_SHARE, type End } from './end-inputs.js';

/** A figure behind an answer that nobody has measured or entered. */
export interface AssumedInput {
  /** Whose figure it is. */
  readonly of: 'spring unit' | 'bike' | 'rider';
  /** Id of the unit, bike or rider: where to change it. */
  readonly id: string;
  /** Field of the message that carries it, with its unit in the name. */
  readonly field: string;
  readonly value: number;
}

const PER_CENT = 100;

/** Every assumed figure behind an answer about one end. */
export function assumedInputs(
  end: End,
  { unit, bike, rider }: { unit: SpringUnit; bike: Bike; rider: Rider },
): AssumedInput[] {
  const ofUnit = PARAMETER_NAMES.filter((name) => {
    const { column } = PARAMETER_FIELDS[name];
    const source = unit.sources[column] ?? 'assumed';
    // A shock has no lower legs to assume anything about.
    return source === 'assumed' && !(unit.kind === 'shock' && column.includes('owerLeg'));
  }).map((field) => {
    const { column, fromSi } = PARAMETER_FIELDS[field];
    return { of: 'spring unit' as const, id: unit.id, field, value: fromSi(unit[column]) };
  });

  const ofBike: AssumedInput[] = [];
  const assume = (field: string, value: number) => ofBike.push({ of: 'bike', id: bike.id, field, value });
  if ((bike.sources.mass ?? 'assumed') === 'assumed') assume('massKg', bike.mass);
  if (bike.frontLoadShare === null) assume('frontLoadSharePct', ASSUMED_FRONT_SHARE * PER_CENT);
  else if (bike.sources.frontLoadShare === 'assumed')
    assume('frontLoadSharePct', bike.frontLoadShare * PER_CENT);
  const unsprung = end === 'fork' ? 'frontUnsprungMass' : 'rearUnsprungMass';
  if ((bike.sources[unsprung] ?? 'assumed') === 'assumed') assume(`${unsprung}Kg`, bike[unsprung]);

  const ofRider: AssumedInput[] =
    rider.readyMassSource === 'assumed'
      ? [{ of: 'rider', id: rider.id, field: 'readyMassKg', value: rider.readyMass }]
      : [];
  return [...ofUnit, ...ofBike, ...ofRider];
}

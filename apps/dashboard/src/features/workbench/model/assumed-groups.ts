import { figureName } from '../../../shared/format/figure-names.js';
import { figureText } from '../../../shared/format/quantities.js';
import { numberText } from '../../../shared/format/parse.js';
import type { BikeEnd, BikeEnds } from '../api/bike-ends.js';
import { withUnit } from '../../../shared/format/with-unit.js';

type AssumedInput = BikeEnd['assumed'][number];

/** Assumed figures that are changed at the same place. */
export interface AssumedGroup extends Pick<AssumedInput, 'of' | 'id'> {
  /** Each with its value and unit: "Bore area 908 mm²". */
  readonly figures: readonly string[];
}

/** Figures of braking that no other list names. The total mass is the rider's and the bike's, which are listed. */
const BRAKING_NAMES = {
  wheelbaseMm: 'Wheelbase',
  centreOfMassHeightMm: 'Height of the centre of mass',
  centreOfMassToRearMm: 'Centre of mass before the rear contact',
} as const;
type BrakingField = keyof typeof BRAKING_NAMES;
const isBrakingField = (field: string): field is BrakingField => field in BRAKING_NAMES;

/** Everything assumed behind the answers about an end, by where it is changed. */
export function assumedGroups(end: BikeEnd, { bikeId, braking }: BikeEnds): readonly AssumedGroup[] {
  const named = end.assumed.map(({ of, id, field, value }) => {
    const { label, unit } = figureName(field);
    return { of, id, text: `${label} ${figureText(value, unit)}` };
  });
  const ofBraking = end.headAngleDeg === null ? [] : braking.assumed.filter(isBrakingField);
  const all = [
    ...named,
    ...ofBraking.map((field) => ({
      of: 'bike' as const,
      id: bikeId,
      text: `${BRAKING_NAMES[field]} ${withUnit(numberText(braking[field], 0), 'mm')}`,
    })),
  ];
  const keys = [...new Set(all.map(({ of, id }) => `${of} ${id}`))];
  return keys.flatMap((key) => {
    const own = all.filter(({ of, id }) => `${of} ${id}` === key);
    const [first] = own;
    return first === undefined ? [] : [{ of: first.of, id: first.id, figures: own.map(({ text }) => text) }];
  });
}

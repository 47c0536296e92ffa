import type { UnitSourcesDto } from '../modules/spring-units/unit-figures.dto.js';
import type { SpringUnitInputDto } from '../modules/spring-units/spring-units.dto.js';

/** A unit of the demo. */
export interface DemoUnit {
  readonly input: SpringUnitInputDto;
  /** What the tool is not told: what the unit really has over what was entered. */
  readonly truth: {
    readonly positiveVolume: number;
    readonly negativeVolume: number;
    readonly damping: number;
    readonly friction: number;
  };
}

/** A unit that the workshop has measured; what is not named was assumed, here and below. */
export const MEASURED: UnitSourcesDto = {
  strokeMm: 'measured',
  boreAreaMm2: 'measured',
  shaftAreaMm2: 'measured',
  positiveVolumeMl: 'measured',
  spacerVolumeMl: 'measured',
  negativeVolumeMl: 'measured',
};

/** A unit whose figures came with it. */
export const ENTERED: UnitSourcesDto = {
  strokeMm: 'entered',
  boreAreaMm2: 'entered',
  shaftAreaMm2: 'entered',
  positiveVolumeMl: 'entered',
  spacerVolumeMl: 'measured',
};

/** A unit of which little is known. */
export const MOSTLY_ASSUMED: UnitSourcesDto = { strokeMm: 'entered', spacerVolumeMl: 'entered' };

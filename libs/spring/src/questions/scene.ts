import { absolutePascal, gaugePascal, kelvin } from '@loamledger/units';
import type { SprungEnd } from '../frame/sprung-end.js';
import type { AirSpringUnit, ThermalTime } from '../unit/air-spring-unit.js';
import type { SpringFill } from '../unit/air-spring.js';

/** A unit with its fill at one end of a bike: all that a question about it starts from. */
export interface Scene {
  readonly unit: AirSpringUnit;
  readonly fill: SpringFill;
  readonly end: SprungEnd;
}

/**
 * Inputs of a scene that carry an uncertainty. In SI units as in the scene; `logDamping` and
 * `logThermalTime` are logarithms of a factor on the damper's slopes and on the time constants, 0 as entered.
 */
export type SceneInput =
  | 'gaugePressure'
  | 'ambientPressure'
  | 'temperature'
  | 'sprungMass'
  | 'boreArea'
  | 'positiveVolume'
  | 'negativeVolume'
  | 'spacerVolume'
  | 'lowerLegVolume'
  | 'sealFriction'
  | 'logDamping'
  | 'logThermalTime';

/** Values of a scene's inputs as they stand. */
export function sceneInputs({ unit, fill, end }: Scene): Readonly<Record<SceneInput, number>> {
  return {
    gaugePressure: fill.gaugePressure,
    ambientPressure: fill.ambientPressure,
    temperature: fill.temperature,
    sprungMass: end.sprungMass,
    boreArea: unit.boreArea,
    positiveVolume: unit.positiveVolume,
    negativeVolume: unit.negativeVolume,
    spacerVolume: unit.spacerVolume,
    lowerLegVolume: unit.lowerLegVolume,
    sealFriction: unit.sealFriction,
    logDamping: 0,
    logThermalTime: 0,
  };
}

/** The scene with some of its inputs set to other values. */
export function sceneWith(scene: Scene, changes: Readonly<Partial<Record<SceneInput, number>>>): Scene {
  const { unit, fill, end } = scene;
  const values = { ...sceneInputs(scene), ...changes };
  const { damper, thermalTime } = unit;
  const damping = Math.exp(values.logDamping);
  return {
    unit: {
      ...unit,
      boreArea: values.boreArea,
      positiveVolume: values.positiveVolume,
      negativeVolume: values.negativeVolume,
      spacerVolume: values.spacerVolume,
      lowerLegVolume: values.lowerLegVolume,
      sealFriction: values.sealFriction,
      damper: {
        lowSpeed: damper.lowSpeed * damping,
        kneeSpeed: damper.kneeSpeed,
        highSpeed: damper.highSpeed * damping,
      },
      thermalTime: scaled(thermalTime, Math.exp(values.logThermalTime)),
    },
    fill: {
      ...fill,
      gaugePressure: gaugePascal(values.gaugePressure),
      ambientPressure: absolutePascal(values.ambientPressure),
      temperature: kelvin(values.temperature),
    },
    end: { ...end, sprungMass: values.sprungMass },
  };
}

function scaled({ positive, negative, lowerLeg }: ThermalTime, factor: number): ThermalTime {
  return { positive: positive * factor, negative: negative * factor, lowerLeg: lowerLeg * factor };
}

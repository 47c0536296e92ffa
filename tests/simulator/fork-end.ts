import { ambientAt, engineEnd, type EndInputs } from '@loamledger/api/suspension/end-inputs.js';
import { sag } from '@loamledger/spring';
import { gaugePascalFromPsi } from '@loamledger/units';
import { SAG_BAND, type ForkFigures, type SetUp } from './contract.js';

/** A fork with a set-up on a track as the engine takes it; the weather is that of the standard atmosphere. */
export function endInputsOf(fork: ForkFigures, setUp: SetUp, altitude: number): EndInputs {
  const air = ambientAt(altitude, { airTemperature: null, stationPressure: null });
  return {
    unit: fork.unit,
    fill: {
      gaugePressure: gaugePascalFromPsi(setUp.pressure),
      spacers: setUp.spacers,
      ambientPressure: air.pressure,
      temperature: air.temperature,
    },
    sprungMass: fork.sprungMass,
    leverage: fork.leverage,
  };
}

/** Every set-up in whole psi within the limits of a fork whose sag is in the wanted band by the fork's figures. */
export function allowedSetUps(fork: ForkFigures, altitude: number): SetUp[] {
  const counts = Array.from({ length: fork.maxSpacers + 1 }, (_, spacers) => spacers);
  const pressures = Array.from(
    { length: fork.maxPressure - fork.minPressure + 1 },
    (_, i) => fork.minPressure + i,
  );
  return counts.flatMap((spacers) =>
    pressures
      .map((pressure): SetUp => ({ pressure, spacers }))
      .filter((setUp) => {
        const { spring, end } = engineEnd(endInputsOf(fork, setUp, altitude));
        const { fraction } = sag(spring, end);
        return fraction >= SAG_BAND.min && fraction <= SAG_BAND.max;
      }),
  );
}

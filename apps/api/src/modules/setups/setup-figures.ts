import {
  celsiusFromKelvin,
  gaugePascal,
  gaugePascalFromPsi,
  kelvin,
  kelvinFromCelsius,
  psiFromGaugePascal,
} from '@loamledger/units';
import type { Bike } from '../bikes/bikes.service.js';
import type { SetupEntity } from './setup.entity.js';
import type { EndSetupDto, SetupDto, SetupInputDto } from './setups.dto.js';
import { FilledHalfKnown, ShockMismatch } from './setups.errors.js';

/** A set-up as stored. */
export type Setup = Readonly<SetupEntity>;

/** The columns of a set-up that a person decides. */
export type SetupFigures = Omit<
  SetupEntity,
  'teamId' | 'id' | 'createdAt' | 'bikeId' | 'revision' | 'previousId' | 'createdBy'
>;

/** A message's figures as columns, for the units that are in the bike now. */
export function figuresOf(
  bike: Bike,
  input: Pick<SetupInputDto, 'fork' | 'shock' | 'filledAltitudeM' | 'filledTemperatureC' | 'note'>,
): SetupFigures {
  const shock = input.shock ?? null;
  if ((bike.shockUnitId === null) !== (shock === null))
    throw new ShockMismatch(bike.shockUnitId !== null, shock);
  const { filledAltitudeM: altitude = null, filledTemperatureC: temperature = null } = input;
  refuseFilledHalfKnown({ filledAltitudeM: altitude, filledTemperatureC: temperature });
  return {
    forkUnitId: bike.forkUnitId,
    forkPressure: gaugePascalFromPsi(input.fork.pressurePsi),
    forkSpacers: input.fork.spacers,
    forkRebound: input.fork.reboundClicks ?? null,
    forkCompression: input.fork.compressionClicks ?? null,
    shockUnitId: bike.shockUnitId,
    shockPressure: shock && gaugePascalFromPsi(shock.pressurePsi),
    shockSpacers: shock && shock.spacers,
    shockRebound: shock?.reboundClicks ?? null,
    shockCompression: shock?.compressionClicks ?? null,
    filledAltitude: altitude,
    filledTemperature: temperature === null ? null : kelvinFromCelsius(temperature),
    note: input.note ?? '',
  };
}

/** @throws FilledHalfKnown where only the altitude or only the temperature of the place of filling is there. */
export function refuseFilledHalfKnown({
  filledAltitudeM,
  filledTemperatureC,
}: Pick<SetupDto, 'filledAltitudeM' | 'filledTemperatureC'>): void {
  if ((filledAltitudeM === null) !== (filledTemperatureC === null))
    throw new FilledHalfKnown(filledTemperatureC);
}

/** The figures of an earlier set-up, to be set again. */
export const figuresOfSetup = (setup: Setup): SetupFigures => ({
  forkUnitId: setup.forkUnitId,
  forkPressure: setup.forkPressure,
  forkSpacers: setup.forkSpacers,
  forkRebound: setup.forkRebound,
  forkCompression: setup.forkCompression,
  shockUnitId: setup.shockUnitId,
  shockPressure: setup.shockPressure,
  shockSpacers: setup.shockSpacers,
  shockRebound: setup.shockRebound,
  shockCompression: setup.shockCompression,
  filledAltitude: setup.filledAltitude,
  filledTemperature: setup.filledTemperature,
  note: setup.note,
});

/** A set-up as a message. */
export function setupAnswer(setup: Setup): SetupDto {
  return {
    id: setup.id,
    bikeId: setup.bikeId,
    revision: setup.revision,
    previousId: setup.previousId,
    fork: endAnswer(
      setup.forkUnitId,
      setup.forkPressure,
      setup.forkSpacers,
      setup.forkRebound,
      setup.forkCompression,
    ),
    shock:
      setup.shockUnitId === null || setup.shockPressure === null
        ? null
        : endAnswer(
            setup.shockUnitId,
            setup.shockPressure,
            setup.shockSpacers ?? 0,
            setup.shockRebound,
            setup.shockCompression,
          ),
    filledAltitudeM: setup.filledAltitude,
    filledTemperatureC:
      setup.filledTemperature === null ? null : celsiusFromKelvin(kelvin(setup.filledTemperature)),
    note: setup.note,
    createdAt: setup.createdAt.toISOString(),
    createdBy: setup.createdBy,
  };
}

const endAnswer = (
  unitId: string,
  pressure: number,
  spacers: number,
  reboundClicks: number | null,
  compressionClicks: number | null,
): EndSetupDto => ({
  unitId,
  pressurePsi: psiFromGaugePascal(gaugePascal(pressure)),
  spacers,
  reboundClicks,
  compressionClicks,
});

import { venuePressure, type Scene } from '@loamledger/spring';
import { celsiusFromKelvin, hectopascalFromAbsolutePascal, psiFromGaugePascal } from '@loamledger/units';
import {
  aboutAnswer,
  AIR_PRESSURE_UNIT,
  ambientOf,
  askEngine,
  assumedAir,
  filledWith,
  PRESSURE_UNIT,
  TEMPERATURE_UNIT,
  type QuestionEnd,
} from './question-end.js';
import { gaugeOf, pressureAnswer } from './sag.js';
import { uncertaintyOf } from './uncertainty.js';
import type { VenueAnswerDto, VenueAskDto } from './venue.dto.js';

/** What to pump to in other air so that the spring is again what it is here. */
export function venueAnswer(end: QuestionEnd, ask: VenueAskDto): VenueAnswerDto {
  const { scene } = askEngine({}, () => filledWith(end, ask.fill));
  const fields = {
    'fill.ambientPressure': { field: 'venue.stationPressureHpa', ...AIR_PRESSURE_UNIT },
    'fill.temperature': { field: 'venue.airTemperatureC', ...TEMPERATURE_UNIT },
  };
  return askEngine(fields, () => {
    const venue = ambientOf(ask.venue);
    const match = (moved: Scene) => venuePressure(moved.unit, moved.fill, moved.end, venue, ask.lowerLegs);
    const found = match(scene);
    const matched = (name: 'matchedAtSag' | 'matchedAtMidStroke') =>
      pressureAnswer(
        found[name],
        uncertaintyOf(end, scene, PRESSURE_UNIT.fromSi, (moved) => gaugeOf(match(moved)[name])),
      );
    const assumed = [...end.assumed, ...assumedAir(ask.venue).map((name) => `venue.${name}`)];
    return {
      venuePressureHpa: hectopascalFromAbsolutePascal(venue.pressure),
      venueTemperatureC: celsiusFromKelvin(venue.temperature),
      untouchedPsi: psiFromGaugePascal(found.untouched),
      lowerLegPressureHpa: hectopascalFromAbsolutePascal(found.lowerLegPressure),
      matchedAtSag: matched('matchedAtSag'),
      matchedAtMidStroke: matched('matchedAtMidStroke'),
      ...aboutAnswer({ assumed }),
    };
  });
}

import { accepted, archived, refersTo } from '../../platform/archive/archived.js';
import { list, message, nullable, number, part, word } from '../../platform/archive/checks.js';
import { SOURCES } from '../../platform/database/source.js';
import { InvalidField } from '../../platform/errors/refusal.js';
import { BikeEntity } from './bike.entity.js';
import { BikeDto } from './bikes.dto.js';
import { answer, refuseLeverageTable, SOURCE_COLUMNS } from './bikes.service.js';

const FIGURES = Object.values(SOURCE_COLUMNS);
const MAX_LEVERAGE_ROWS = 100;

export const BIKE_ARCHIVE = archived(BikeEntity, {
  columns: {
    sources: part(Object.fromEntries(FIGURES.map((name) => [name, word(SOURCES)])), FIGURES),
    leverageTable: nullable(
      list(part({ shockTravel: number(0, 1), leverageRatio: number(0, 10) }), MAX_LEVERAGE_ROWS),
    ),
  },
  row: message(BikeDto, answer),
  rules: [
    refersTo('forkUnitId', 'kind', 'fork'),
    refersTo('shockUnitId', 'kind', 'shock'),
    accepted(({ leverageTable, shockUnitId }, of) => {
      if ((leverageTable === null) !== (shockUnitId === null)) {
        throw new InvalidField('bike.half-a-rear', 'leverageTable', null, 'there with a shock, null without');
      }
      const shock = of('shockUnitId') as { stroke: number } | null;
      if (leverageTable && shock) refuseLeverageTable(leverageTable, shock.stroke);
    }),
  ],
});

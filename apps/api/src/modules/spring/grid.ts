import {
  airSpring,
  bottomingGrid,
  sag,
  travelForHeight,
  type GridCell,
  type Scene,
} from '@loamledger/spring';
import { gaugePascalFromPsi, millimetresFromMetres } from '@loamledger/units';
import type { GridAnswerDto, GridAskDto, GridCellDto } from './grid.dto.js';
import {
  aboutAnswer,
  askEngine,
  filledWith,
  NO_UNIT,
  PRESSURE_UNIT,
  type QuestionEnd,
} from './question-end.js';

const PER_CENT = 100;

/** Sag, fullest hit and travels for every spacer count with every pressure. */
export function gridAnswer(end: QuestionEnd, ask: GridAskDto): GridAnswerDto {
  const fields = {
    'fill.spacers': { field: 'spacers', ...NO_UNIT },
    'fill.gaugePressure': { field: 'pressuresPsi', ...PRESSURE_UNIT },
    'gaugePressures[]': { field: 'pressuresPsi.#', ...PRESSURE_UNIT },
  };
  return askEngine(fields, () => {
    const [pressurePsi = 0] = ask.pressuresPsi;
    const [spacers = 0] = ask.spacers;
    const { scene } = filledWith(end, { pressurePsi, spacers });
    const pressures = ask.pressuresPsi.map(gaugePascalFromPsi);
    const grid = bottomingGrid(scene.unit, scene.fill, scene.end, ask.spacers, pressures);
    const { length } = ask.pressuresPsi;
    return {
      cells: grid.map((cell, i) => ({
        ...cellAnswer(scene, cell, ask.heightsM ?? []),
        // As it was asked: there and back through pascals would differ in the last digit.
        pressurePsi: ask.pressuresPsi[i % length] ?? NaN,
      })),
      ...aboutAnswer(end),
    };
  });
}

function cellAnswer(
  { unit, fill, end }: Scene,
  { spacers, gaugePressure, bottoming }: GridCell,
  heights: readonly number[],
): Omit<GridCellDto, 'pressurePsi'> {
  const spring = airSpring(unit, { ...fill, spacers, gaugePressure });
  const settled = sag(spring, end);
  return {
    spacers,
    sagStatus: settled.status,
    sagPct: PER_CENT * settled.fraction,
    bottomingStatus: bottoming.status,
    bottomingHeightM: bottoming.status === 'found' ? bottoming.height : null,
    travelsMm: heights.map((height) => millimetresFromMetres(travelForHeight(spring, end, height).travel)),
  };
}

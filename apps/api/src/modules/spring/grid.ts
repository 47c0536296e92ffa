import {
  airSpring,
  bottomingGrid,
  sag,
  travelForHeight,
  type GridCell,
  type Scene,
} from '@loamledger/spring';
import { gaugePascalFromPsi, millimetresFromMetres } from '@loamledger/units';
import { InvalidField } from '../../platform/errors/refusal.js';
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
/** A whole grid takes some 20 ms; one of an end so damped that it creeps would keep all others waiting. */
const LONGEST_MS = 3_000;

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
    const { length } = ask.pressuresPsi;
    const start = performance.now();
    const grid = ask.spacers.flatMap((count) => {
      if (performance.now() - start > LONGEST_MS) throw tooLong(ask);
      return bottomingGrid(scene.unit, scene.fill, scene.end, [count], pressures);
    });
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

const tooLong = ({ spacers, pressuresPsi }: GridAskDto) =>
  new InvalidField(
    'spring.too-long',
    'spacers',
    spacers.length,
    `fewer counts, with ${pressuresPsi.length} pressures each: this end takes too long to compute`,
  );

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

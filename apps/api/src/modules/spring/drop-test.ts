import { airSpring, fitDropTest, type DropTestResult, type DropTestWarning } from '@loamledger/spring';
import {
  gaugePascalFromPsi,
  metresFromMillimetres,
  millimetresFromMetres,
  psiFromGaugePascal,
} from '@loamledger/units';
import { InvalidField } from '../../platform/errors/refusal.js';
import type { DropLandingDto, DropTestAnswerDto, DropTestAskDto } from './drop-test.dto.js';
import {
  aboutAnswer,
  askEngine,
  filledWith,
  LENGTH_UNIT,
  NO_UNIT,
  PRESSURE_UNIT,
  type QuestionEnd,
} from './question-end.js';

const PER_CENT = 100;

const FIELDS = {
  'landings[].dropHeight': { field: 'landings.#.dropHeightM', ...NO_UNIT, unit: 'm' },
  'landings[].travelUsed': { field: 'landings.#.travelUsedMm', ...LENGTH_UNIT },
  readingSd: { field: 'end.uncertainty.readingMm', ...LENGTH_UNIT },
  dampingLogSd: { field: 'end.uncertainty.dampingPct', unit: '%', fromSi: (sd: number) => PER_CENT * sd },
};

/** What part of a measured drop goes into the spring, and what the landings are worth. */
export function dropTestAnswer(end: QuestionEnd, ask: DropTestAskDto): DropTestAnswerDto {
  const [first] = ask.landings;
  if (!first) throw new InvalidField('spring.no-landings', 'landings', 0, 'at least one landing');
  const { scene } = askEngine(landingFields(0), () => filledWith(end, first));
  ask.landings.forEach((landing, i) =>
    askEngine(landingFields(i), () => airSpring(scene.unit, { ...scene.fill, ...engineFill(landing) })),
  );
  const { readingMm, dampingPct } = end.uncertainty;
  const found = askEngine(FIELDS, () =>
    fitDropTest(
      scene,
      ask.landings.map((landing) => ({
        ...engineFill(landing),
        dropHeight: landing.dropHeightM,
        travelUsed: metresFromMillimetres(landing.travelUsedMm),
      })),
      metresFromMillimetres(readingMm),
      dampingPct / PER_CENT,
    ),
  );
  return { ...fitAnswer(found), ...aboutAnswer(end) };
}

const engineFill = ({ spacers, pressurePsi }: DropLandingDto) => ({
  spacers,
  gaugePressure: gaugePascalFromPsi(pressurePsi),
});

const landingFields = (index: number) => ({
  'fill.spacers': { field: `landings.${index}.spacers`, ...NO_UNIT },
  'fill.gaugePressure': { field: `landings.${index}.pressurePsi`, ...PRESSURE_UNIT },
});

function fitAnswer(found: DropTestResult): Omit<DropTestAnswerDto, 'engineVersion' | 'assumed'> {
  if (found.status === 'refused') {
    return {
      status: found.status,
      reason: found.reason,
      message: found.message,
      absorption: null,
      damping: null,
      setUps: [],
      scatter: null,
      warnings: [],
      atFullTravel: 0,
    };
  }
  const { absorption, damping } = found;
  const pct = (share: number) => (PER_CENT * share).toFixed(0);
  return {
    status: found.status,
    reason: null,
    message: `${pct(absorption.value)} % of the drop goes into the spring (${pct(absorption.lower)} to ${pct(absorption.upper)} %).`,
    absorption: { ...absorption },
    damping: { ...damping },
    setUps: found.setUps.map((setUp) => ({
      spacers: setUp.spacers,
      pressurePsi: psiFromGaugePascal(setUp.gaugePressure),
      dropHeightM: setUp.dropHeight,
      count: setUp.count,
      readMm: millimetresFromMetres(setUp.read),
      predictedMm: millimetresFromMetres(setUp.predicted),
      residual: setUp.residual,
    })),
    scatter: found.scatter,
    warnings: found.warnings.map((code) => ({ code, message: WARNING_TEXTS[code] })),
    atFullTravel: found.atFullTravel,
  };
}

const WARNING_TEXTS: Readonly<Record<DropTestWarning, string>> = {
  'no-repeats': 'No set-up was repeated, so scatter cannot be told from effect.',
  scatter: 'The readings scatter more than twice as much as a ring does.',
  'order-follows-set-up':
    'The set-ups were tried in the order of their travel, so a drift over the session would look like their effect.',
  drift: 'What is left after the fit rises or falls over the session.',
};

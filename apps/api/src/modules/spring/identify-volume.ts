import { identifyVolume, type VolumeIdentification } from '@loamledger/spring';
import {
  cubicMetresFromMillilitres,
  gaugePascalFromPsi,
  metresFromMillimetres,
  millilitresFromCubicMetres,
} from '@loamledger/units';
import type { EngineFields } from '../spring-units/engine-refusal.js';
import type { VolumeAnswerDto, VolumeAskDto } from './identify-volume.dto.js';
import { aboutAnswer, askEngine, LENGTH_UNIT, NO_UNIT, PRESSURE_UNIT } from './question-end.js';

const PER_CENT = 100;
const VOLUME_UNIT = { unit: 'mL', fromSi: millilitresFromCubicMetres };

/** Standard uncertainties where none are told. Common practice, no source. */
const ASSUMED = {
  hoseVolumeSdMl: 1.5,
  boreAreaSdPct: 0.5,
  gaugeZeroSdPsi: 0.3,
  gaugeReadingSdPsi: 0.5,
  travelSdMm: 0.5,
  spacerVolumeSdPct: 10,
} as const;

/** What the readings are of, SI units. */
export interface IdentifiedUnit {
  readonly boreArea: number;
  readonly spacerVolume: number;
  readonly ambientPressure: Parameters<typeof identifyVolume>[0]['ambientPressure'];
  readonly assumed: readonly string[];
}

const FIELDS: EngineFields = {
  'runs.length': { field: 'runs', unit: 'runs', fromSi: (count) => count },
  'runs[].readings': { field: 'runs.#.readings', unit: 'readings', fromSi: (count) => count },
  'runs[].spacers': { field: 'runs.#.spacers', ...NO_UNIT },
  'runs[].readings[].travel': { field: 'runs.#.readings.#.travelMm', ...LENGTH_UNIT },
  'runs[].readings[].gaugePressure': { field: 'runs.#.readings.#.pressurePsi', ...PRESSURE_UNIT },
  'spacerVolume.value': { field: 'spacerVolumeMl', ...VOLUME_UNIT },
  'hoseVolume.value': { field: 'hoseVolumeMl', ...VOLUME_UNIT },
  gaugeReadingSd: { field: 'gaugeReadingSdPsi', ...PRESSURE_UNIT },
};

/** Volume of a positive chamber from pressures at two travels or more. Runs in the computing thread. */
export function volumeAnswer(unit: IdentifiedUnit, ask: VolumeAskDto): VolumeAnswerDto {
  const { value, assumed } = withAssumed(ask);
  const found = askEngine(FIELDS, () =>
    identifyVolume({
      runs: ask.runs.map(({ spacers, readings }) => ({
        spacers,
        readings: readings.map(({ travelMm, pressurePsi }) => ({
          travel: metresFromMillimetres(travelMm),
          gaugePressure: gaugePascalFromPsi(pressurePsi),
        })),
      })),
      ambientPressure: unit.ambientPressure,
      boreArea: { value: unit.boreArea, sd: (value.boreAreaSdPct / PER_CENT) * unit.boreArea },
      hoseVolume: {
        value: cubicMetresFromMillilitres(ask.hoseVolumeMl),
        sd: cubicMetresFromMillilitres(value.hoseVolumeSdMl),
      },
      spacerVolume: {
        value: unit.spacerVolume,
        sd: (value.spacerVolumeSdPct / PER_CENT) * unit.spacerVolume,
      },
      gaugeZeroSd: value.gaugeZeroSdPsi === null ? Infinity : gaugePascalFromPsi(value.gaugeZeroSdPsi),
      gaugeReadingSd: gaugePascalFromPsi(value.gaugeReadingSdPsi),
      travelSd: metresFromMillimetres(value.travelSdMm),
    }),
  );
  return { ...identificationAnswer(found), ...aboutAnswer({ assumed: [...unit.assumed, ...assumed] }) };
}

/** What is told, with what is assumed for the rest, and the names of that. */
function withAssumed(ask: VolumeAskDto) {
  const names = (Object.keys(ASSUMED) as (keyof typeof ASSUMED)[]).filter((name) => ask[name] === undefined);
  const value = {
    hoseVolumeSdMl: ask.hoseVolumeSdMl ?? ASSUMED.hoseVolumeSdMl,
    boreAreaSdPct: ask.boreAreaSdPct ?? ASSUMED.boreAreaSdPct,
    gaugeZeroSdPsi: ask.gaugeZeroSdPsi === undefined ? ASSUMED.gaugeZeroSdPsi : ask.gaugeZeroSdPsi,
    gaugeReadingSdPsi: ask.gaugeReadingSdPsi ?? ASSUMED.gaugeReadingSdPsi,
    travelSdMm: ask.travelSdMm ?? ASSUMED.travelSdMm,
    spacerVolumeSdPct: ask.spacerVolumeSdPct ?? ASSUMED.spacerVolumeSdPct,
  };
  return { value, assumed: names };
}

function identificationAnswer(
  found: VolumeIdentification,
): Omit<VolumeAnswerDto, 'engineVersion' | 'assumed'> {
  if (found.status === 'refused') {
    return {
      status: found.status,
      reason: found.reason,
      message: found.message,
      positiveVolumeMl: null,
      sdMl: null,
      relativeSdPct: found.relativeSd === null ? null : finiteOrNull(PER_CENT * found.relativeSd),
      shares: [],
      scatter: null,
      residuals: [],
    };
  }
  const volume = millilitresFromCubicMetres(found.positiveVolume);
  const sd = millilitresFromCubicMetres(found.sd);
  const shares = (Object.keys(found.shares) as (keyof typeof found.shares)[])
    .map((of) => ({ of, sharePct: PER_CENT * found.shares[of] }))
    .sort((a, b) => b.sharePct - a.sharePct);
  return {
    status: found.status,
    reason: null,
    message: `${volume.toFixed(0)} mL ± ${sd.toFixed(1)} mL, limited by the ${LIMITS[found.limitedBy]}.`,
    positiveVolumeMl: volume,
    sdMl: sd,
    relativeSdPct: (PER_CENT * found.sd) / found.positiveVolume,
    shares,
    scatter: found.scatter,
    residuals: [...found.residuals],
  };
}

const LIMITS = {
  gaugeReadings: 'pressure readings',
  travelReadings: 'travel readings',
  boreArea: 'bore area',
  hoseVolume: 'hose volume',
  gaugeZero: "gauge's zero",
  spacerVolume: 'spacer volume',
} as const;

const finiteOrNull = (value: number): number | null => (Number.isFinite(value) ? value : null);

import {
  barFromGaugePascal,
  celsiusFromFahrenheit,
  fahrenheitFromCelsius,
  gaugePascal,
  gaugePascalFromBar,
  gaugePascalFromPsi,
  kilogramsFromPounds,
  poundsFromKilograms,
  psiFromGaugePascal,
} from '@loamledger/units';
import type { components } from '../http/generated/schema.js';

/** The units that a person may choose between. */
export type Units = Omit<components['schemas']['UnitsDto'], 'version'>;

/** How a quantity is shown whose figures come in the unit of the API. */
interface Scale {
  readonly unit: string;
  readonly fromApi: (value: number) => number;
  readonly toApi: (shown: number) => number;
  /** Most decimals of a stored figure in a field; also the finest that a gauge or a scale shows. */
  readonly decimals: number;
  /** One press of a stepper. */
  readonly step: number;
  /** What a pump is read to. */
  readonly pumpStep: number;
}

/** The unit of a figure in the API's messages, where a person may choose another. */
export type ApiUnit = 'psi' | 'kg' | '°C';

const same = (value: number) => value;
/** Half a psi and a twentieth of a bar are what a hand gauge is read to (common practice, no source). */
const PSI: Scale = { unit: 'psi', fromApi: same, toApi: same, decimals: 1, step: 1, pumpStep: 0.5 };
const BAR: Scale = {
  unit: 'bar',
  fromApi: (psi) => barFromGaugePascal(gaugePascalFromPsi(psi)),
  toApi: (bar) => psiFromGaugePascal(gaugePascal(gaugePascalFromBar(bar))),
  decimals: 2,
  step: 0.05,
  pumpStep: 0.05,
};
const plain = (unit: string, decimals: number): Scale => ({
  unit,
  fromApi: same,
  toApi: same,
  decimals,
  step: 1,
  pumpStep: 1,
});
const SCALES: { readonly [Kind in keyof Units]: Readonly<Record<Units[Kind], Scale>> } = {
  pressure: { psi: PSI, bar: BAR },
  mass: {
    kg: plain('kg', 3),
    lb: { ...plain('lb', 2), fromApi: poundsFromKilograms, toApi: kilogramsFromPounds },
  },
  temperature: {
    '°C': plain('°C', 1),
    '°F': { ...plain('°F', 1), fromApi: fahrenheitFromCelsius, toApi: celsiusFromFahrenheit },
  },
};

const USUAL: Units = { pressure: 'psi', mass: 'kg', temperature: '°C' };
/** What the signed-in person has chosen. One for all pages, as the language is. */
let chosen = USUAL;

/** Whether these are the units of the API's messages. */
export const isAsApi = ({ pressure, mass, temperature }: Units): boolean =>
  pressure === USUAL.pressure && mass === USUAL.mass && temperature === USUAL.temperature;

/** Shows figures in these units from now on; what stands on a page has to be drawn again. */
export function showIn({ pressure, mass, temperature }: Units): void {
  chosen = { pressure, mass, temperature };
}

/** How a figure of this unit is shown; nothing for units that nobody chooses, as millimetres. */
export function scaleOf(unit: string): Scale | undefined {
  switch (unit as ApiUnit) {
    case 'psi':
      return SCALES.pressure[chosen.pressure];
    case 'kg':
      return SCALES.mass[chosen.mass];
    case '°C':
      return SCALES.temperature[chosen.temperature];
    default:
      return undefined;
  }
}

/** The scale of a quantity that can be chosen. */
export const scale = (unit: ApiUnit): Scale => scaleOf(unit) as Scale;

/** The unit in which a figure of this unit is shown; millimetres and all others stay. */
export const shownUnit = (unit: string): string => scaleOf(unit)?.unit ?? unit;

/** The figure in the API's unit that a round one of the shown unit is nearest to. */
export function rounded(unit: ApiUnit, value: number, to: 'step' | 'pumpStep' | 'decimals'): number {
  const { fromApi, toApi, decimals, ...steps } = scale(unit);
  const step = to === 'decimals' ? 10 ** -decimals : steps[to];
  return toApi(Number((Math.round(fromApi(value) / step) * step).toFixed(decimals)));
}

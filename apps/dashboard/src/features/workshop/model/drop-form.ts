import { parseNumber } from '../../../shared/format/parse.js';
import type { Landing } from '../api/drop-test.js';

/** One landing as typed; the names are those of the message, by which the API refuses. */
export type LandingValues = Readonly<Record<LandingField, string>>;
export type LandingField = keyof Landing;

export const LANDING_FIELDS = ['dropHeightM', 'pressurePsi', 'spacers', 'travelUsedMm'] as const;

const FIRST_LANDING: LandingValues = { dropHeightM: '', pressurePsi: '', spacers: '', travelUsedMm: '' };

/** A landing on the same set-up as the last one: only the ring is to be read. */
export const sameAgain = (landings: readonly LandingValues[]): LandingValues => ({
  ...(landings.at(-1) ?? FIRST_LANDING),
  travelUsedMm: '',
});

/** A landing on another set-up, from the same height. */
export const anotherSetUp = (landings: readonly LandingValues[]): LandingValues => ({
  ...FIRST_LANDING,
  dropHeightM: landings.at(-1)?.dropHeightM ?? '',
});

/** The field of a new landing that is typed into next. */
export const firstToType = (landing: LandingValues): LandingField =>
  LANDING_FIELDS.find((field) => landing[field] === '') ?? 'travelUsedMm';

/** What is missing or no number, by the path of its field: `landings.2.travelUsedMm`. */
export function landingErrors(landings: readonly LandingValues[]): Record<string, string> {
  return Object.fromEntries(
    landings.flatMap((landing, i) =>
      LANDING_FIELDS.flatMap((field) => {
        const value = parseNumber(landing[field]);
        if (value === null) return [[`landings.${i}.${field}`, 'Needed']];
        return Number.isNaN(value) ? [[`landings.${i}.${field}`, 'Must be a number']] : [];
      }),
    ),
  );
}

/** The landings in the order of riding; only complete ones are asked about. */
export const landingMessage = (landings: readonly LandingValues[]): Landing[] =>
  landings.map(({ dropHeightM, pressurePsi, spacers, travelUsedMm }) => ({
    dropHeightM: figure(dropHeightM),
    pressurePsi: figure(pressurePsi),
    spacers: figure(spacers),
    travelUsedMm: figure(travelUsedMm),
  }));

const figure = (text: string) => parseNumber(text) ?? Number.NaN;

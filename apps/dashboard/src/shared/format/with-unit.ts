/** Where no line may break. */
const NO_BREAK = '\u00a0';

/** A figure beside its unit, or a count beside what it counts, which no line parts: 18.1 %, 161 mm, 3 spacers, 68.9°. */
export function withUnit(figure: string, unit: string): string {
  if (unit === '') return figure;
  return unit === '°' ? `${figure}°` : `${figure}${NO_BREAK}${unit}`;
}

/** Where a sentence has a figure and then a unit; ± stays with its figure too. */
const FIGURE_AND_UNIT =
  /(\d) (?=(?:%|psi|bar|mm|cm|m|mL|kg|g|lb|N|s|h|°C|°F|hPa|spacers?|clicks?|runs?)(?!\w))|(±) (?=\d)/g;

/** A sentence in which no line parts a figure from its unit. */
export const wholeFigures = (sentence: string): string =>
  sentence.replaceAll(FIGURE_AND_UNIT, (found) => `${found.slice(0, -1)}${NO_BREAK}`);

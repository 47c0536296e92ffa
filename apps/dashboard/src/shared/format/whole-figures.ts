import { inChosenUnits } from './sentences.js';
import { NO_BREAK } from './with-unit.js';

/** Where a sentence has a figure and then a unit; ± stays with its figure too. */
const FIGURE_AND_UNIT =
  /(\d) (?=(%|°[CF]|psi|bar|[cm]?m|mL|k?g|lb|N|s|h|hPa|spacers?|clicks?|runs?)(?!\w))|± (?=\d)/g;

/** A sentence in which no line parts a figure from its unit. */
export const wholeFigures = (sentence: string): string =>
  sentence.replaceAll(FIGURE_AND_UNIT, (found) => `${found.slice(0, -1)}${NO_BREAK}`);

/** A sentence of the API in the chosen units, in which no line parts a figure from its unit. */
export const wholeInChosenUnits = (sentence: string): string => wholeFigures(inChosenUnits(sentence));

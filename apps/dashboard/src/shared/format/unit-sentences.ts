import { shownLimit, shownText } from './entry.js';
import { shownUnit, type ApiUnit } from './units.js';

const FIGURE = String.raw`[−-]?\d+(?:\.\d+)?`;
/** Figures with a unit as the API writes them: "at most 120 psi", "a number from 5 to 600 psi", "71 → 68 psi". */
const FIGURES = new RegExp(
  `(at least |at most |from )?(${FIGURE})(?:( to | → )(${FIGURE}))? (psi|kg|°C)(?![/\\w])`,
  'g',
);

/** A sentence with every figure in the chosen units. */
export const withChosenUnits = (sentence: string): string =>
  sentence.replaceAll(
    FIGURES,
    (
      all: string,
      limit: string | undefined,
      first: string,
      word: string | undefined,
      second: string,
      unit: ApiUnit,
    ) => {
      if (shownUnit(unit) === unit) return all;
      const low = figureText(first, unit, limit === 'at most ' ? 'most' : limit && 'least');
      const high = word && `${word}${figureText(second, unit, limit && 'most')}`;
      return `${limit ?? ''}${low}${high ?? ''} ${shownUnit(unit)}`;
    },
  );

function figureText(figure: string, unit: ApiUnit, side: 'least' | 'most' | '' | undefined): string {
  const plain = figure.replace('−', '-');
  const text = side ? shownLimit(unit, Number(plain), side) : shownText(unit, plain);
  return text.replace('-', '−');
}

import { FIGURE_NAMES } from '../../../shared/format/figure-names.js';
import { figureText } from '../../../shared/format/quantities.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';
import { boreText, type MeasureValues } from './measure-form.js';

type Figure = keyof SpringUnit['sources'] & keyof typeof FIGURE_NAMES;

/** Whether the volume is worked out from a bore that nobody has measured or entered. */
export const isBoreAssumed = ({ boreMm }: Pick<MeasureValues, 'boreMm'>, unit: SpringUnit): boolean =>
  boreMm === boreText(unit) && isAssumed(unit, 'boreAreaMm2');

/** Figures of the unit that enter the positive volume although nobody has measured or entered them. */
export const assumedBehindPositive = (values: MeasureValues, unit: SpringUnit): readonly string[] =>
  names(unit, [...boreIfAssumed(values, unit), ...spacersIfIn(values)]);

/** The same for the negative volume. */
export const assumedBehindNegative = (values: MeasureValues, unit: SpringUnit): readonly string[] =>
  names(unit, [...boreIfAssumed(values, unit), ...spacersIfIn(values), 'shaftAreaMm2', 'transferPositionMm']);

const isAssumed = (unit: SpringUnit, figure: Figure) => (unit.sources[figure] ?? 'assumed') === 'assumed';

const boreIfAssumed = (values: MeasureValues, unit: SpringUnit): Figure[] =>
  isBoreAssumed(values, unit) ? ['boreAreaMm2'] : [];

const spacersIfIn = ({ spacers }: MeasureValues): Figure[] =>
  spacers.trim() === '0' ? [] : ['spacerVolumeMl'];

const names = (unit: SpringUnit, figures: readonly Figure[]) =>
  figures
    .filter((figure) => isAssumed(unit, figure))
    .map((figure) => `${FIGURE_NAMES[figure].label} ${figureText(unit[figure], FIGURE_NAMES[figure].unit)}`);

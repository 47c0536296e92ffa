import classes from './comparisons.module.css';

const SIZE_PX = 5;
/** Line styles by arm: whole, dashed, dotted, mixed, long. Where there are more arms they begin again. */
const DASHES = ['none', '8 4', '2 3', '10 3 2 3', '14 4'];
const SERIES = [classes.series0, classes.series1, classes.series2, classes.series3, classes.series4];

/** The style of an arm by its place among them. */
export const seriesClass = (index: number): string => SERIES[index % SERIES.length] ?? '';
export const dashOf = (index: number): string => DASHES[index % DASHES.length] ?? 'none';

interface SeriesMarkProps {
  readonly index: number;
  readonly x: number;
  readonly y: number;
  readonly hollow?: boolean;
  readonly active?: boolean;
}

/** The mark of a run: circle, square, triangle, diamond, cross by its arm; hollow where its time does not count. */
export function SeriesMark({ index, x, y, hollow = false, active = false }: SeriesMarkProps) {
  const s = SIZE_PX;
  const className = [classes.dot, seriesClass(index), hollow && classes.hollow, active && classes.active]
    .filter(Boolean)
    .join(' ');
  const shapes = [
    `M${x - s} ${y}a${s} ${s} 0 1 0 ${2 * s} 0a${s} ${s} 0 1 0 ${-2 * s} 0Z`,
    `M${x - s} ${y - s}h${2 * s}v${2 * s}h${-2 * s}Z`,
    `M${x} ${y - s - 1}L${x + s + 1} ${y + s}H${x - s - 1}Z`,
    `M${x} ${y - s - 2}L${x + s + 2} ${y}L${x} ${y + s + 2}L${x - s - 2} ${y}Z`,
    `M${x - s} ${y - 2}h3v-3h4v3h3v4h-3v3h-4v-3h-3Z`,
  ];
  return <path className={className} d={shapes[index % shapes.length]} />;
}

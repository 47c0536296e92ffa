import { Text } from '@mantine/core';
import { formatSigned, formatNumber } from '../../../shared/format/numbers.js';
import { pictureSize, useWidth } from '../../../shared/ui/use-width.js';
import type { IntervalRow } from '../api/comparison.js';
import { alongAxis, type Axis } from '../model/axis.js';
import { intervalAxis } from '../model/interval-axis.js';
import { texts } from '../texts.js';
import { IntervalTable } from './interval-table.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import classes from './comparisons.module.css';

const ROW_PX = 60;
const NAME_PX = 18;
const TOP_PX = 24;
const AXIS_PX = 40;
const INSET_PX = 20;
const CAP_PX = 7;
const ARROW_PX = 9;
const DOT_PX = 6;

interface IntervalChartProps<Row> {
  readonly title: string;
  /** What the rows are: set-ups, or sections of the track. */
  readonly head: string;
  readonly rows: readonly Row[];
  readonly marginPct: number;
  readonly labelOf: (row: Row) => string;
}

/** Where the difference of each may be, against the margin. */
export function IntervalChart<Row extends IntervalRow>(props: IntervalChartProps<Row>) {
  const { title, head, rows, marginPct, labelOf } = props;
  const { ref, width } = useWidth<HTMLDivElement>();
  const axis = intervalAxis(rows, marginPct);
  const plot = Math.max(0, width - 2 * INSET_PX);
  const x = (value: number) => INSET_PX + alongAxis(axis, value, plot);
  const foot = TOP_PX + rows.length * ROW_PX;
  return (
    <figure className={classes.frame} aria-label={title}>
      <Text size="sm" c="dimmed">
        {texts.intervalsLead(withUnit(formatNumber(marginPct, 1), '%'))}
      </Text>
      <div ref={ref}>
        <svg {...pictureSize(width, foot + AXIS_PX)} aria-hidden="true">
          <rect
            className={classes.band}
            x={x(-marginPct)}
            width={Math.max(0, x(marginPct) - x(-marginPct))}
            y={TOP_PX}
            height={rows.length * ROW_PX}
          />
          <text className={classes.figure} x={x(0)} y={TOP_PX - 6} textAnchor="middle">
            {texts.margin}
          </text>
          <text className={classes.figure} x={INSET_PX} y={TOP_PX - 6}>
            {texts.faster}
          </text>
          <text className={classes.figure} x={width - INSET_PX} y={TOP_PX - 6} textAnchor="end">
            {texts.slower}
          </text>
          <line className={classes.edge} x1={x(0)} x2={x(0)} y1={TOP_PX} y2={foot} />
          {rows.map((row, i) => (
            <Interval
              key={labelOf(row)}
              row={row}
              label={labelOf(row)}
              axis={axis}
              x={x}
              top={TOP_PX + i * ROW_PX}
            />
          ))}
          {axis.ticks.map((tick) => (
            <text key={tick} className={classes.figure} x={x(tick)} y={foot + 16} textAnchor="middle">
              {formatSigned(tick, Number.isInteger(tick) ? 0 : 1)}
            </text>
          ))}
          <text className={classes.figure} x={width - INSET_PX} y={foot + 34} textAnchor="end">
            {texts.axis}
          </text>
        </svg>
      </div>
      <IntervalTable head={head} rows={rows} labelOf={labelOf} />
    </figure>
  );
}

interface IntervalProps {
  readonly row: IntervalRow;
  readonly label: string;
  readonly axis: Axis;
  readonly x: (value: number) => number;
  readonly top: number;
}

function Interval({ row, label, axis, x, top }: IntervalProps) {
  const { lowPct, highPct, differencePct } = row;
  const y = top + NAME_PX + (ROW_PX - NAME_PX) / 2;
  const isKnown = lowPct !== null && highPct !== null && differencePct !== null;
  return (
    <>
      <text className={classes.name} x={INSET_PX} y={top + NAME_PX}>
        {isKnown ? label : `${label}: ${texts.noInterval}`}
      </text>
      {isKnown && (
        <>
          <path
            className={classes.bar}
            d={[
              `M${x(Math.max(lowPct, axis.from))} ${y}H${x(Math.min(highPct, axis.to))}`,
              barEnd(x(Math.max(lowPct, axis.from)), y, lowPct < axis.from ? -ARROW_PX : null),
              barEnd(x(Math.min(highPct, axis.to)), y, highPct > axis.to ? ARROW_PX : null),
            ].join('')}
          />
          <circle className={classes.estimate} cx={x(differencePct)} cy={y} r={DOT_PX} />
        </>
      )}
    </>
  );
}

/** A cap, or an arrow where the interval goes on beyond the picture. */
const barEnd = (at: number, y: number, arrow: number | null): string =>
  arrow === null
    ? `M${at} ${y - CAP_PX}V${y + CAP_PX}`
    : `M${at - arrow} ${y - CAP_PX}L${at} ${y}L${at - arrow} ${y + CAP_PX}`;

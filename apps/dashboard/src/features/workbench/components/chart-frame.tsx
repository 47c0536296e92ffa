import { memo, useId } from 'react';
import { alongAxis, strokeTicks, type Axis } from '../model/chart-scale.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import classes from './curve-chart.module.css';

export const PICTURE_HEIGHT_PX = 260;
/** Room for the longest figure with its unit: 1000 N/mm. */
export const LEFT_PX = 76;
export const RIGHT_PX = 12;
export const TOP_PX = 10;
const BOTTOM_PX = 40;
export const PLOT_HEIGHT_PX = PICTURE_HEIGHT_PX - TOP_PX - BOTTOM_PX;
export const TICK_COUNT = 5;
/** From a line to the foot of the figure beside it, px. */
const FIGURE_DROP_PX = 4;
const FIGURE_GAP_PX = 6;
const FIGURE_ROW_PX = 16;
const AXIS_NAME_PX = 34;

interface FrameProps {
  readonly y: Axis;
  readonly unit: string;
  readonly strokeMm: number;
  readonly bumperStartMm: number;
  readonly plotWidth: number;
}

/** Axes with figures and units, and the bumper hatched as on the stroke bar. */
export const ChartFrame = memo(function ChartFrame({
  y,
  unit,
  strokeMm,
  bumperStartMm,
  plotWidth,
}: FrameProps) {
  const hatchId = useId();
  const x = (mm: number) => (mm / strokeMm) * plotWidth;
  const down = (value: number) => PLOT_HEIGHT_PX - alongAxis(y, value, PLOT_HEIGHT_PX);
  const hasBumper = bumperStartMm < strokeMm;
  return (
    <g aria-hidden="true">
      <pattern id={hatchId} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line className={classes.hatch} y2="6" />
      </pattern>
      {hasBumper && (
        <rect
          fill={`url(#${hatchId})`}
          x={x(bumperStartMm)}
          width={Math.max(0, plotWidth - x(bumperStartMm))}
          height={PLOT_HEIGHT_PX}
        />
      )}
      {y.ticks.map((value) => (
        <g key={value}>
          <line
            className={value === 0 ? classes.edge : classes.grid}
            x2={plotWidth}
            y1={down(value)}
            y2={down(value)}
          />
          <text
            className={classes.figure}
            x={-FIGURE_GAP_PX}
            y={down(value) + FIGURE_DROP_PX}
            textAnchor="end"
          >
            {withUnit(String(value), value === y.ticks.at(-1) ? unit : '')}
          </text>
        </g>
      ))}
      {strokeTicks(strokeMm, TICK_COUNT).map((mm) => (
        <text
          key={mm}
          className={classes.figure}
          x={x(mm)}
          y={PLOT_HEIGHT_PX + FIGURE_ROW_PX}
          textAnchor="middle"
        >
          {mm}
        </text>
      ))}
      <text className={classes.figure} x={plotWidth} y={PLOT_HEIGHT_PX + AXIS_NAME_PX} textAnchor="end">
        {texts.travelAxis}
      </text>
    </g>
  );
});
